-- AlterTable
ALTER TABLE "Episode" ADD COLUMN "checksJson" TEXT;

-- AlterTable
ALTER TABLE "Person" ADD COLUMN "consentJson" TEXT;
