-- CreateTable
CREATE TABLE "Camera" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "rateNumerator" INTEGER NOT NULL,
    "rateDenominator" INTEGER NOT NULL,
    "isDropFrame" BOOLEAN NOT NULL,
    "clockOffset" REAL NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Camera_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SpokenPromise" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "saidInId" TEXT,
    "where" TEXT NOT NULL,
    "dueId" TEXT,
    "closure" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "closedInId" TEXT,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "SpokenPromise_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LogEntry" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "at" BIGINT NOT NULL,
    "receivedAt" BIGINT NOT NULL,
    "taskId" TEXT,
    "supersedes" TEXT,
    "entryJson" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    CONSTRAINT "LogEntry_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LogPhoto" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "entryId" TEXT NOT NULL,
    "receivedAt" BIGINT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "LogPhoto_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "LogEntry_seriesId_at_idx" ON "LogEntry"("seriesId", "at");

-- CreateIndex
CREATE INDEX "LogEntry_seriesId_kind_idx" ON "LogEntry"("seriesId", "kind");

-- CreateIndex
CREATE UNIQUE INDEX "LogEntry_seriesId_id_key" ON "LogEntry"("seriesId", "id");

-- CreateIndex
CREATE INDEX "LogPhoto_seriesId_entryId_idx" ON "LogPhoto"("seriesId", "entryId");

-- The full text of the log. Its rows follow LogEntry by triggers; "number" stays the same through VACUUM.
CREATE VIRTUAL TABLE "LogSearch" USING fts5("words", content='LogEntry', content_rowid='number', prefix='2 3', tokenize="unicode61 remove_diacritics 2");

CREATE TRIGGER "LogEntry_search_insert" AFTER INSERT ON "LogEntry" BEGIN
    INSERT INTO "LogSearch"("rowid", "words") VALUES (new."number", new."words");
END;

CREATE TRIGGER "LogEntry_search_delete" AFTER DELETE ON "LogEntry" BEGIN
    INSERT INTO "LogSearch"("LogSearch", "rowid", "words") VALUES ('delete', old."number", old."words");
END;
