-- AlterTable
ALTER TABLE "Material" ADD COLUMN "usableUntil" TEXT;

-- AlterTable
ALTER TABLE "Person" ADD COLUMN "consentJson" TEXT;

-- AlterTable
ALTER TABLE "Segment" ADD COLUMN "cutStart" REAL;
