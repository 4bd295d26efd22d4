-- Number of the last change that touched what a plan is made from. Older changes are not told apart: all of them count.
ALTER TABLE "Series" ADD COLUMN "planChange" INTEGER NOT NULL DEFAULT 0;
UPDATE "Series" SET "planChange" = "changeNumber";
