-- CreateTable
CREATE TABLE "Forecast" (
    "seriesId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "planNumber" INTEGER NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "resultJson" TEXT NOT NULL,

    PRIMARY KEY ("seriesId", "number"),
    CONSTRAINT "Forecast_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "Series" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Forecast_seriesId_kind_idx" ON "Forecast"("seriesId", "kind");
