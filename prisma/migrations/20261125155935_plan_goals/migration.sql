-- Columns that older series fill with what they meant before.
ALTER TABLE "Series" ADD COLUMN "frozenDays" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "Series" ADD COLUMN "goalsJson" TEXT;
