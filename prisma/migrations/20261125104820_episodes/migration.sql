-- CreateTable
CREATE TABLE "Segment" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "episodeId" TEXT,
    "role" TEXT NOT NULL,
    "length" REAL NOT NULL,
    "isResult" BOOLEAN NOT NULL,
    "hook" REAL NOT NULL,
    "hang" REAL NOT NULL,
    "thread" TEXT NOT NULL,
    "isEvergreen" BOOLEAN NOT NULL,
    "isFlashback" BOOLEAN NOT NULL,
    "storyDate" TEXT,
    "ending" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Segment_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Segment_seriesId_episodeId_fkey" FOREIGN KEY ("seriesId", "episodeId") REFERENCES "Episode" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "SegmentTask" (
    "seriesId" TEXT NOT NULL,
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "taskId" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "segmentId", "position"),
    CONSTRAINT "SegmentTask_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SegmentTask_seriesId_segmentId_fkey" FOREIGN KEY ("seriesId", "segmentId") REFERENCES "Segment" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "SegmentTask_seriesId_taskId_fkey" FOREIGN KEY ("seriesId", "taskId") REFERENCES "Task" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "TimeLog" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "taskId" TEXT NOT NULL,
    "activity" TEXT NOT NULL,
    "start" BIGINT NOT NULL,
    "end" BIGINT,
    "wasInterrupted" BOOLEAN NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "TimeLog_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "TimeLog_seriesId_taskId_fkey" FOREIGN KEY ("seriesId", "taskId") REFERENCES "Task" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Sponsorship" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "sponsor" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "exclusiveIn" TEXT NOT NULL,
    "episodeId" TEXT,
    "part" TEXT NOT NULL,
    "dueDate" TEXT,
    "minimumSeconds" REAL NOT NULL,
    "spotStart" REAL,
    "spotEnd" REAL,
    "disclosureText" TEXT NOT NULL,
    "spokenAt" REAL,
    "shownFrom" REAL,
    "shownUntil" REAL,
    "needsApproval" BOOLEAN NOT NULL,
    "approvedOn" TEXT,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Sponsorship_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Sponsorship_seriesId_episodeId_fkey" FOREIGN KEY ("seriesId", "episodeId") REFERENCES "Episode" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- New columns of the series. Added rather than the table made anew, so that columns added elsewhere stay.
ALTER TABLE "Series" ADD COLUMN "titles" REAL NOT NULL DEFAULT 0.5;
ALTER TABLE "Series" ADD COLUMN "bankMinimum" INTEGER NOT NULL DEFAULT 2;
ALTER TABLE "Series" ADD COLUMN "usesExperience" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "Series" ADD COLUMN "filmingJson" TEXT NOT NULL DEFAULT '{"position":8,"shot":2,"take":3,"reset":4,"retakeChance":0.25,"oneWay":25,"packUp":10}';
ALTER TABLE "Series" ADD COLUMN "cameraJson" TEXT NOT NULL DEFAULT '{"cameras":1,"bitRate":100,"cards":[64,64],"batteries":3,"batteryMinutes":90,"fillLimit":0.9}';

-- CreateIndex
CREATE INDEX "Segment_seriesId_episodeId_idx" ON "Segment"("seriesId", "episodeId");

-- CreateIndex
CREATE INDEX "SegmentTask_seriesId_taskId_idx" ON "SegmentTask"("seriesId", "taskId");

-- CreateIndex
CREATE INDEX "TimeLog_seriesId_taskId_idx" ON "TimeLog"("seriesId", "taskId");

-- CreateIndex
CREATE INDEX "Sponsorship_seriesId_episodeId_idx" ON "Sponsorship"("seriesId", "episodeId");
