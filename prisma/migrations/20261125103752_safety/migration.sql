-- AlterTable
ALTER TABLE "Equipment" ADD COLUMN "exposureJson" TEXT;

-- AlterTable
ALTER TABLE "Material" ADD COLUMN "vapourJson" TEXT;

-- AlterTable
ALTER TABLE "Place" ADD COLUMN "airJson" TEXT;

-- AlterTable
ALTER TABLE "Task" ADD COLUMN "hazardsJson" TEXT;

-- CreateTable
CREATE TABLE "Hazard" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "fieldsJson" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Hazard_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Statement" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "aboutJson" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "signedBy" TEXT NOT NULL,
    "at" BIGINT NOT NULL,
    "reason" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Statement_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
