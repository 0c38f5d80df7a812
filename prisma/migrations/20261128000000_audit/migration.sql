-- CreateTable
CREATE TABLE "audit_entries" (
    "organisation_id" TEXT NOT NULL,
    "id" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "member_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "detail" JSONB NOT NULL,

    CONSTRAINT "audit_entries_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateIndex
CREATE INDEX "audit_entries_organisation_id_at_idx" ON "audit_entries"("organisation_id", "at");

-- From here on by hand: what was noted stays.
SELECT tallywing_protect('audit_entries', 'SELECT, INSERT');
GRANT USAGE ON SEQUENCE audit_entries_id_seq TO tallywing_app;
