-- A job in work: since when, by whom, under which hold, and what was open on the aircraft when it began.
ALTER TABLE "jobs" ADD COLUMN "started_at" TIMESTAMPTZ(3);
ALTER TABLE "jobs" ADD COLUMN "started_by" TEXT;
ALTER TABLE "jobs" ADD COLUMN "hold_id" TEXT;
ALTER TABLE "jobs" ADD COLUMN "open_at_start" TEXT[];
ALTER TABLE "jobs" ADD COLUMN "ended_at" TIMESTAMPTZ(3);
ALTER TABLE "jobs" ADD COLUMN "ended_because" TEXT;

-- From when the reading behind an item due by hours is too old to carry it.
ALTER TABLE "due_items" ADD COLUMN "reading_ends_at" TIMESTAMPTZ(3);

-- What a house has set, one row a version. A version is never rewritten: another one, with its day and reason, follows it.
CREATE TABLE "house_policies" (
    "organisation_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "effective_on" DATE NOT NULL,
    "body" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "set_by" TEXT NOT NULL,
    "set_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "house_policies_pkey" PRIMARY KEY ("organisation_id","kind","version")
);

SELECT tallywing_protect('house_policies', 'SELECT, INSERT');
