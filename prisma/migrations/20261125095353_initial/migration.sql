-- CreateTable
CREATE TABLE "Series" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "cadenceDays" INTEGER NOT NULL,
    "leadDays" INTEGER NOT NULL,
    "fillLimit" REAL NOT NULL,
    "workshopTemperature" REAL NOT NULL,
    "runtimeTarget" REAL NOT NULL,
    "runtimeMin" REAL NOT NULL,
    "runtimeMax" REAL NOT NULL,
    "frameRateNumerator" INTEGER NOT NULL,
    "frameRateDenominator" INTEGER NOT NULL,
    "changeNumber" INTEGER NOT NULL DEFAULT 0,
    "createdAt" BIGINT NOT NULL
);

-- CreateTable
CREATE TABLE "Person" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "skillsJson" TEXT NOT NULL,
    "hoursJson" TEXT NOT NULL,
    "awayJson" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Person_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Place" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "capacity" INTEGER NOT NULL,
    "airZone" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Place_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Equipment" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "count" INTEGER NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Equipment_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Part" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "assembly" TEXT NOT NULL,
    "statesJson" TEXT NOT NULL,
    "placeId" TEXT,
    "tradeId" TEXT,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Part_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Part_seriesId_placeId_fkey" FOREIGN KEY ("seriesId", "placeId") REFERENCES "Place" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION,
    CONSTRAINT "Part_seriesId_tradeId_fkey" FOREIGN KEY ("seriesId", "tradeId") REFERENCES "Trade" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Material" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "sort" TEXT NOT NULL,
    "touchDry" REAL NOT NULL,
    "recoatFrom" REAL NOT NULL,
    "recoatUntil" REAL,
    "handle" REAL NOT NULL,
    "fullCure" REAL NOT NULL,
    "referenceTemperature" REAL NOT NULL,
    "minimumTemperature" REAL NOT NULL,
    "doublingPer" REAL NOT NULL,
    "potLife" REAL,
    "hasSolvent" BOOLEAN NOT NULL,
    "hasIsocyanate" BOOLEAN NOT NULL,
    "source" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Material_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Trade" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "craft" TEXT NOT NULL,
    "openHoursJson" TEXT NOT NULL,
    "closedJson" TEXT NOT NULL,
    "trip" REAL NOT NULL,
    "contact" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Trade_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Episode" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "releaseDate" TEXT NOT NULL,
    "isEvergreen" BOOLEAN NOT NULL,
    "status" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Episode_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Task" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "category" TEXT NOT NULL,
    "episodeId" TEXT,
    "placeId" TEXT NOT NULL,
    "effortLow" REAL NOT NULL,
    "effortLikely" REAL NOT NULL,
    "effortHigh" REAL NOT NULL,
    "inOneGo" BOOLEAN NOT NULL,
    "irreversible" BOOLEAN NOT NULL,
    "crewJson" TEXT NOT NULL,
    "coverage" TEXT NOT NULL,
    "shotsJson" TEXT NOT NULL,
    "minimumTemperature" REAL,
    "needsDaylight" BOOLEAN NOT NULL,
    "isDusty" BOOLEAN NOT NULL,
    "isNoisy" BOOLEAN NOT NULL,
    "layOutJson" TEXT NOT NULL,
    "cautionsJson" TEXT NOT NULL,
    "manualReference" TEXT NOT NULL,
    "pinnedStart" BIGINT,
    "doneAt" BIGINT,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Task_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Task_seriesId_episodeId_fkey" FOREIGN KEY ("seriesId", "episodeId") REFERENCES "Episode" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION,
    CONSTRAINT "Task_seriesId_placeId_fkey" FOREIGN KEY ("seriesId", "placeId") REFERENCES "Place" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "TaskPart" (
    "seriesId" TEXT NOT NULL,
    "taskId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "partId" TEXT NOT NULL,
    "fromState" TEXT,
    "toState" TEXT,

    PRIMARY KEY ("seriesId", "taskId", "position"),
    CONSTRAINT "TaskPart_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "TaskPart_seriesId_taskId_fkey" FOREIGN KEY ("seriesId", "taskId") REFERENCES "Task" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "TaskPart_seriesId_partId_fkey" FOREIGN KEY ("seriesId", "partId") REFERENCES "Part" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "TaskEquipment" (
    "seriesId" TEXT NOT NULL,
    "taskId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "equipmentId" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "taskId", "position"),
    CONSTRAINT "TaskEquipment_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "TaskEquipment_seriesId_taskId_fkey" FOREIGN KEY ("seriesId", "taskId") REFERENCES "Task" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "TaskEquipment_seriesId_equipmentId_fkey" FOREIGN KEY ("seriesId", "equipmentId") REFERENCES "Equipment" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Coat" (
    "seriesId" TEXT NOT NULL,
    "taskId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "id" TEXT NOT NULL,
    "materialId" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "taskId", "position"),
    CONSTRAINT "Coat_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Coat_seriesId_taskId_fkey" FOREIGN KEY ("seriesId", "taskId") REFERENCES "Task" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "Coat_seriesId_materialId_fkey" FOREIGN KEY ("seriesId", "materialId") REFERENCES "Material" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "OutsideJob" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "tradeId" TEXT NOT NULL,
    "episodeId" TEXT,
    "quoteLow" REAL NOT NULL,
    "quoteLikely" REAL NOT NULL,
    "quoteHigh" REAL NOT NULL,
    "crew" INTEGER NOT NULL,
    "droppedOffAt" BIGINT,
    "promisedFor" TEXT,
    "collectedAt" BIGINT,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "OutsideJob_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "OutsideJob_seriesId_tradeId_fkey" FOREIGN KEY ("seriesId", "tradeId") REFERENCES "Trade" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION,
    CONSTRAINT "OutsideJob_seriesId_episodeId_fkey" FOREIGN KEY ("seriesId", "episodeId") REFERENCES "Episode" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "OutsideJobPart" (
    "seriesId" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "partId" TEXT NOT NULL,
    "fromState" TEXT,
    "toState" TEXT,

    PRIMARY KEY ("seriesId", "jobId", "position"),
    CONSTRAINT "OutsideJobPart_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "OutsideJobPart_seriesId_jobId_fkey" FOREIGN KEY ("seriesId", "jobId") REFERENCES "OutsideJob" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "OutsideJobPart_seriesId_partId_fkey" FOREIGN KEY ("seriesId", "partId") REFERENCES "Part" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Link" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "fromTaskId" TEXT,
    "fromJobId" TEXT,
    "toTaskId" TEXT,
    "toJobId" TEXT,
    "stage" TEXT,
    "minWait" REAL NOT NULL,
    "maxWait" REAL,
    "clock" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Link_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Link_seriesId_fromTaskId_fkey" FOREIGN KEY ("seriesId", "fromTaskId") REFERENCES "Task" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION,
    CONSTRAINT "Link_seriesId_fromJobId_fkey" FOREIGN KEY ("seriesId", "fromJobId") REFERENCES "OutsideJob" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION,
    CONSTRAINT "Link_seriesId_toTaskId_fkey" FOREIGN KEY ("seriesId", "toTaskId") REFERENCES "Task" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION,
    CONSTRAINT "Link_seriesId_toJobId_fkey" FOREIGN KEY ("seriesId", "toJobId") REFERENCES "OutsideJob" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Session" (
    "seriesId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "start" BIGINT NOT NULL,
    "end" BIGINT NOT NULL,
    "isRecording" BOOLEAN NOT NULL,
    "hasDaylight" BOOLEAN NOT NULL,
    "isNoiseAllowed" BOOLEAN NOT NULL,
    "heating" REAL,

    PRIMARY KEY ("seriesId", "id"),
    CONSTRAINT "Session_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SessionPlace" (
    "seriesId" TEXT NOT NULL,
    "sessionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "placeId" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "sessionId", "position"),
    CONSTRAINT "SessionPlace_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SessionPlace_seriesId_sessionId_fkey" FOREIGN KEY ("seriesId", "sessionId") REFERENCES "Session" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "SessionPlace_seriesId_placeId_fkey" FOREIGN KEY ("seriesId", "placeId") REFERENCES "Place" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "SessionCrew" (
    "seriesId" TEXT NOT NULL,
    "sessionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "personId" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "sessionId", "position"),
    CONSTRAINT "SessionCrew_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SessionCrew_seriesId_sessionId_fkey" FOREIGN KEY ("seriesId", "sessionId") REFERENCES "Session" ("seriesId", "id") ON DELETE CASCADE ON UPDATE NO ACTION,
    CONSTRAINT "SessionCrew_seriesId_personId_fkey" FOREIGN KEY ("seriesId", "personId") REFERENCES "Person" ("seriesId", "id") ON DELETE NO ACTION ON UPDATE NO ACTION
);

-- CreateTable
CREATE TABLE "Change" (
    "seriesId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "at" BIGINT NOT NULL,
    "label" TEXT NOT NULL,
    "editsJson" TEXT NOT NULL,
    "undoes" INTEGER,
    "undoneBy" INTEGER,

    PRIMARY KEY ("seriesId", "number"),
    CONSTRAINT "Change_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Plan" (
    "seriesId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "acceptedAt" BIGINT,
    "basedOnChange" INTEGER NOT NULL,
    "finish" BIGINT NOT NULL,
    "blockCount" INTEGER NOT NULL,
    "unplacedCount" INTEGER NOT NULL,
    "resultJson" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "number"),
    CONSTRAINT "Plan_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Part_seriesId_placeId_idx" ON "Part"("seriesId", "placeId");

-- CreateIndex
CREATE INDEX "Part_seriesId_tradeId_idx" ON "Part"("seriesId", "tradeId");

-- CreateIndex
CREATE INDEX "Task_seriesId_episodeId_idx" ON "Task"("seriesId", "episodeId");

-- CreateIndex
CREATE INDEX "Task_seriesId_placeId_idx" ON "Task"("seriesId", "placeId");

-- CreateIndex
CREATE INDEX "TaskPart_seriesId_partId_idx" ON "TaskPart"("seriesId", "partId");

-- CreateIndex
CREATE INDEX "TaskEquipment_seriesId_equipmentId_idx" ON "TaskEquipment"("seriesId", "equipmentId");

-- CreateIndex
CREATE INDEX "Coat_seriesId_materialId_idx" ON "Coat"("seriesId", "materialId");

-- CreateIndex
CREATE INDEX "OutsideJob_seriesId_tradeId_idx" ON "OutsideJob"("seriesId", "tradeId");

-- CreateIndex
CREATE INDEX "OutsideJob_seriesId_episodeId_idx" ON "OutsideJob"("seriesId", "episodeId");

-- CreateIndex
CREATE INDEX "OutsideJobPart_seriesId_partId_idx" ON "OutsideJobPart"("seriesId", "partId");

-- CreateIndex
CREATE INDEX "Link_seriesId_fromTaskId_idx" ON "Link"("seriesId", "fromTaskId");

-- CreateIndex
CREATE INDEX "Link_seriesId_fromJobId_idx" ON "Link"("seriesId", "fromJobId");

-- CreateIndex
CREATE INDEX "Link_seriesId_toTaskId_idx" ON "Link"("seriesId", "toTaskId");

-- CreateIndex
CREATE INDEX "Link_seriesId_toJobId_idx" ON "Link"("seriesId", "toJobId");

-- CreateIndex
CREATE INDEX "SessionPlace_seriesId_placeId_idx" ON "SessionPlace"("seriesId", "placeId");

-- CreateIndex
CREATE INDEX "SessionCrew_seriesId_personId_idx" ON "SessionCrew"("seriesId", "personId");

-- CreateIndex
CREATE INDEX "Plan_seriesId_status_idx" ON "Plan"("seriesId", "status");
