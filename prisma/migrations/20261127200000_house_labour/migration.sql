-- Hours and prices of a house, one row a version: the newest counts, the older ones tell who changed what and when.
CREATE TABLE "house_labour" (
    "organisation_id" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "set_by" TEXT NOT NULL,
    "set_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "house_labour_pkey" PRIMARY KEY ("organisation_id","version")
);

SELECT tallywing_protect('house_labour', 'SELECT, INSERT');
