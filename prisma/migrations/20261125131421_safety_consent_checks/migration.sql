-- AlterTable
ALTER TABLE "Episode" ADD COLUMN "checksJson" TEXT;
