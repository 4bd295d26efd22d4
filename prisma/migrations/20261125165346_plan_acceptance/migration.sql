-- AlterTable
ALTER TABLE "Plan" ADD COLUMN "acceptedBy" TEXT;
ALTER TABLE "Plan" ADD COLUMN "acceptedWhy" TEXT;
