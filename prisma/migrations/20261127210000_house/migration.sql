-- What managers change one after the other counts its changes, so that two of them cannot overwrite each other unseen.
ALTER TABLE "members" ADD COLUMN "revision" INTEGER NOT NULL DEFAULT 1;
ALTER TABLE "operators" ADD COLUMN "revision" INTEGER NOT NULL DEFAULT 1;
ALTER TABLE "bases" ADD COLUMN "revision" INTEGER NOT NULL DEFAULT 1;
ALTER TABLE "flight_profiles" ADD COLUMN "revision" INTEGER NOT NULL DEFAULT 1;

-- CreateTable
CREATE TABLE "house_entries" (
    "organisation_id" TEXT NOT NULL,
    "id" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "member_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "subject_name" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,

    CONSTRAINT "house_entries_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateIndex
CREATE INDEX "house_entries_organisation_id_subject_kind_subject_id_id_idx" ON "house_entries"("organisation_id", "subject_kind", "subject_id", "id");

-- CreateTable
CREATE TABLE "test_sets" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "serial" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "in_use" BOOLEAN NOT NULL DEFAULT true,
    "revision" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "test_sets_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "test_sets_organisation_id_serial_key" ON "test_sets"("organisation_id", "serial");

-- CreateTable
CREATE TABLE "calibrations" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "test_set_id" TEXT NOT NULL,
    "checked_on" DATE NOT NULL,
    "as_found" TEXT,
    "good_until" DATE,
    "certificate" TEXT,
    "struck" TEXT,

    CONSTRAINT "calibrations_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateIndex
CREATE INDEX "calibrations_organisation_id_test_set_id_checked_on_idx" ON "calibrations"("organisation_id", "test_set_id", "checked_on");

-- CreateTable
CREATE TABLE "agencies" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "certificate" TEXT,
    "ratings" TEXT[],
    "held_from" DATE,
    "held_until" DATE,
    "in_use" BOOLEAN NOT NULL DEFAULT true,
    "revision" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "agencies_pkey" PRIMARY KEY ("organisation_id","id")
);

-- AddForeignKey
ALTER TABLE "calibrations" ADD CONSTRAINT "calibrations_organisation_id_test_set_id_fkey" FOREIGN KEY ("organisation_id", "test_set_id") REFERENCES "test_sets"("organisation_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- From here on by hand.

-- Which test set an entry names, in small letters and as a plain column: an operator on the body is not leakproof, so a row policy would keep it
-- from any index.
ALTER TABLE "changes" ADD COLUMN "test_set_serial" TEXT GENERATED ALWAYS AS (lower(body #>> '{record,instrument,serial}')) STORED;
CREATE INDEX "changes_organisation_id_test_set_serial_idx" ON "changes"("organisation_id", "test_set_serial");

-- What was changed, and by whom, stays.
SELECT tallywing_protect('house_entries', 'SELECT, INSERT');
GRANT USAGE ON SEQUENCE house_entries_id_seq TO tallywing_app;

SELECT tallywing_protect('test_sets', 'SELECT, INSERT, UPDATE');
SELECT tallywing_protect('agencies', 'SELECT, INSERT, UPDATE');
-- A calibration is never rewritten: a wrong one is struck out with the reason, and the right one added.
SELECT tallywing_protect('calibrations', 'SELECT, INSERT');
GRANT UPDATE (struck) ON calibrations TO tallywing_app;
