-- AlterTable
ALTER TABLE "Series" ADD COLUMN "sourceReadingsJson" TEXT;
