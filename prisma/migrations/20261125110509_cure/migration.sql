-- AlterTable
ALTER TABLE "Material" ADD COLUMN "cureJson" TEXT;

-- AlterTable
ALTER TABLE "OutsideJob" ADD COLUMN "processJson" TEXT;

-- AlterTable
ALTER TABLE "Series" ADD COLUMN "workshopJson" TEXT;

-- AlterTable
ALTER TABLE "Trade" ADD COLUMN "termsJson" TEXT;

-- CreateTable
CREATE TABLE "CoatingSystem" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "layersJson" TEXT NOT NULL,
    "abrading" REAL NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "CoatingSystem_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "HeatingRun" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "airZone" TEXT NOT NULL,
    "start" BIGINT NOT NULL,
    "end" BIGINT NOT NULL,
    "setPoint" REAL NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "HeatingRun_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Weather" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "daysJson" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Weather_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Readings" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "airZone" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "from" BIGINT NOT NULL,
    "to" BIGINT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Readings_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReadingRow" (
    "seriesId" TEXT NOT NULL,
    "readingsId" TEXT NOT NULL,
    "at" BIGINT NOT NULL,
    "temperature" REAL NOT NULL,
    "humidity" REAL,

    PRIMARY KEY ("seriesId", "readingsId", "at"),
    CONSTRAINT "ReadingRow_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
