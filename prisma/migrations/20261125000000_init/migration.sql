-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "organisations" (
    "organisation_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "policy" JSONB NOT NULL DEFAULT '{}',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "organisations_pkey" PRIMARY KEY ("organisation_id")
);

-- CreateTable
CREATE TABLE "members" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "password_hash" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "operator_id" TEXT,
    "certificate" JSONB NOT NULL DEFAULT '{}',
    "active" BOOLEAN NOT NULL DEFAULT true,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "members_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "sessions" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "member_id" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),
    "user_agent" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "sessions_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "operators" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "operators_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "bases" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,

    CONSTRAINT "bases_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "flight_profiles" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sort" INTEGER NOT NULL,
    "conditions" JSONB NOT NULL,
    "wanted" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "flight_profiles_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "equipment_types" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "superseded_by" TEXT,

    CONSTRAINT "equipment_types_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "aircraft" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "registration" TEXT NOT NULL,
    "make" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "operator_id" TEXT,
    "base_id" TEXT,
    "revision" INTEGER NOT NULL,
    "dossier_schema" INTEGER NOT NULL,
    "configuration" JSONB NOT NULL,
    "status" JSONB NOT NULL,
    "meters" JSONB NOT NULL,
    "dossier_hash" TEXT NOT NULL,
    "rules_version" TEXT NOT NULL,
    "catalogue_hash" TEXT NOT NULL,
    "zones_version" TEXT NOT NULL,
    "profiles_hash" TEXT NOT NULL,
    "assessment_hash" TEXT NOT NULL,
    "judged_at" TIMESTAMPTZ(3) NOT NULL,
    "windows_to" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "aircraft_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "changes" (
    "organisation_id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "dossier_hash_after" TEXT NOT NULL,
    "member_id" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "commit_key" TEXT NOT NULL,
    "job_id" TEXT,

    CONSTRAINT "changes_pkey" PRIMARY KEY ("organisation_id","aircraft_id","seq")
);

-- CreateTable
CREATE TABLE "commits" (
    "organisation_id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "request_hash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,
    "member_id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "commits_pkey" PRIMARY KEY ("organisation_id","key")
);

-- CreateTable
CREATE TABLE "assessments" (
    "organisation_id" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "body" BYTEA NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "assessments_pkey" PRIMARY KEY ("organisation_id","hash")
);

-- CreateTable
CREATE TABLE "ready_windows" (
    "organisation_id" TEXT NOT NULL,
    "profile_id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "n" INTEGER NOT NULL,
    "from_at" TIMESTAMPTZ(3) NOT NULL,
    "to_at" TIMESTAMPTZ(3) NOT NULL,
    "above" INTEGER NOT NULL,
    "up_to" INTEGER,
    "ready" TEXT NOT NULL,
    "standing" TEXT NOT NULL,
    "by_means" TEXT[],
    "because" TEXT[],
    "top_ft" INTEGER,
    "weakest" TEXT,
    "changes_at" TIMESTAMPTZ(3),
    "changes_after" INTEGER,

    CONSTRAINT "ready_windows_pkey" PRIMARY KEY ("organisation_id","profile_id","aircraft_id","n")
);

-- CreateTable
CREATE TABLE "findings" (
    "organisation_id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "n" INTEGER NOT NULL,
    "rule_id" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subject_name" TEXT NOT NULL,
    "opens_at" TIMESTAMPTZ(3) NOT NULL,
    "closes_at" TIMESTAMPTZ(3),
    "above" INTEGER NOT NULL,
    "up_to" INTEGER,
    "outcome" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "effect" TEXT NOT NULL,
    "capabilities" TEXT[],
    "topic" TEXT NOT NULL,
    "remedies" JSONB NOT NULL,

    CONSTRAINT "findings_pkey" PRIMARY KEY ("organisation_id","aircraft_id","n")
);

-- CreateTable
CREATE TABLE "due_items" (
    "organisation_id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "n" INTEGER NOT NULL,
    "rule_id" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subject_name" TEXT NOT NULL,
    "topic" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "effect" TEXT NOT NULL,
    "due_on" DATE,
    "due_at" TIMESTAMPTZ(3),
    "meter" TEXT,
    "at_centihours" INTEGER,
    "hours_left" INTEGER,
    "projected_at" TIMESTAMPTZ(3),
    "expected_at" TIMESTAMPTZ(3),
    "combine" TEXT NOT NULL,

    CONSTRAINT "due_items_pkey" PRIMARY KEY ("organisation_id","aircraft_id","n")
);

-- CreateTable
CREATE TABLE "unit_databases" (
    "organisation_id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "unit_id" TEXT NOT NULL,
    "unit_name" TEXT NOT NULL,
    "database" TEXT NOT NULL,
    "slot" TEXT NOT NULL,
    "cycle" TEXT,
    "effective_at" TIMESTAMPTZ(3),
    "expires_at" TIMESTAMPTZ(3),

    CONSTRAINT "unit_databases_pkey" PRIMARY KEY ("organisation_id","aircraft_id","unit_id","database","slot")
);

-- CreateTable
CREATE TABLE "events" (
    "organisation_id" TEXT NOT NULL,
    "id" BIGSERIAL NOT NULL,
    "kind" TEXT NOT NULL,
    "aircraft_id" TEXT,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "body" JSONB NOT NULL,

    CONSTRAINT "events_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "jobs" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "draft" JSONB NOT NULL,
    "draft_schema" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "created_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "jobs_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateTable
CREATE TABLE "imports" (
    "organisation_id" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "progress" JSONB NOT NULL,
    "report" JSONB NOT NULL,
    "member_id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "imports_pkey" PRIMARY KEY ("organisation_id","id")
);

-- CreateIndex
CREATE INDEX "members_email_idx" ON "members"("email");

-- CreateIndex
CREATE UNIQUE INDEX "members_organisation_id_email_key" ON "members"("organisation_id", "email");

-- CreateIndex
CREATE INDEX "sessions_id_idx" ON "sessions"("id");

-- CreateIndex
CREATE INDEX "sessions_organisation_id_member_id_idx" ON "sessions"("organisation_id", "member_id");

-- CreateIndex
CREATE INDEX "equipment_types_organisation_id_family_idx" ON "equipment_types"("organisation_id", "family");

-- CreateIndex
CREATE INDEX "aircraft_organisation_id_windows_to_idx" ON "aircraft"("organisation_id", "windows_to");

-- CreateIndex
CREATE UNIQUE INDEX "aircraft_organisation_id_registration_key" ON "aircraft"("organisation_id", "registration");

-- CreateIndex
CREATE INDEX "assessments_organisation_id_aircraft_id_revision_idx" ON "assessments"("organisation_id", "aircraft_id", "revision");

-- CreateIndex
CREATE INDEX "ready_windows_organisation_id_profile_id_to_at_from_at_idx" ON "ready_windows"("organisation_id", "profile_id", "to_at", "from_at");

-- CreateIndex
CREATE INDEX "ready_windows_organisation_id_aircraft_id_idx" ON "ready_windows"("organisation_id", "aircraft_id");

-- CreateIndex
CREATE INDEX "findings_organisation_id_effect_opens_at_idx" ON "findings"("organisation_id", "effect", "opens_at");

-- CreateIndex
CREATE INDEX "due_items_organisation_id_expected_at_idx" ON "due_items"("organisation_id", "expected_at");

-- CreateIndex
CREATE INDEX "events_organisation_id_at_idx" ON "events"("organisation_id", "at");

-- CreateIndex
CREATE INDEX "events_organisation_id_aircraft_id_at_idx" ON "events"("organisation_id", "aircraft_id", "at");

-- CreateIndex
CREATE INDEX "jobs_organisation_id_aircraft_id_idx" ON "jobs"("organisation_id", "aircraft_id");

-- AddForeignKey
ALTER TABLE "members" ADD CONSTRAINT "members_organisation_id_fkey" FOREIGN KEY ("organisation_id") REFERENCES "organisations"("organisation_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_organisation_id_member_id_fkey" FOREIGN KEY ("organisation_id", "member_id") REFERENCES "members"("organisation_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft" ADD CONSTRAINT "aircraft_organisation_id_fkey" FOREIGN KEY ("organisation_id") REFERENCES "organisations"("organisation_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- From here on by hand: what the schema language cannot say.

-- The role the application works under. It owns nothing, logs in nowhere and cannot bypass a row policy.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'tallywing_app') THEN
    CREATE ROLE tallywing_app NOLOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE;
  END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'tallywing_door') THEN
    CREATE ROLE tallywing_door NOLOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE;
  END IF;
  IF NOT pg_has_role(current_user, 'tallywing_app', 'SET') THEN
    EXECUTE format('GRANT tallywing_app TO %I', current_user);
  END IF;
  IF NOT pg_has_role(current_user, 'tallywing_door', 'SET') THEN
    EXECUTE format('GRANT tallywing_door TO %I', current_user);
  END IF;
END
$$;

GRANT USAGE ON SCHEMA public TO tallywing_app, tallywing_door;

-- Every table goes through this: forced, so that not even its owner sees another organisation's rows, and with the
-- empty setting (what is left after a transaction-local setting ends) matching nothing.
CREATE FUNCTION tallywing_protect(protected regclass, rights text) RETURNS void
LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', protected);
  EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', protected);
  EXECUTE format(
    'CREATE POLICY own_organisation ON %s USING (organisation_id = nullif(current_setting(''tallywing.organisation'', true), ''''))'
    || ' WITH CHECK (organisation_id = nullif(current_setting(''tallywing.organisation'', true), ''''))', protected);
  EXECUTE format('GRANT %s ON %s TO tallywing_app', rights, protected);
END
$$;
REVOKE ALL ON FUNCTION tallywing_protect(regclass, text) FROM PUBLIC;

SELECT tallywing_protect('organisations', 'SELECT, INSERT, UPDATE');
SELECT tallywing_protect('members', 'SELECT, INSERT, UPDATE');
SELECT tallywing_protect('sessions', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('operators', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('bases', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('flight_profiles', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('aircraft', 'SELECT, INSERT, UPDATE');
SELECT tallywing_protect('ready_windows', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('findings', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('due_items', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('unit_databases', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('jobs', 'SELECT, INSERT, UPDATE, DELETE');
SELECT tallywing_protect('imports', 'SELECT, INSERT, UPDATE');

-- What happened stays: these can be added to and read, never changed or taken away.
SELECT tallywing_protect('changes', 'SELECT, INSERT');
SELECT tallywing_protect('commits', 'SELECT, INSERT');
SELECT tallywing_protect('assessments', 'SELECT, INSERT');
SELECT tallywing_protect('events', 'SELECT, INSERT');
GRANT USAGE ON SEQUENCE events_id_seq TO tallywing_app;

-- An entry of the catalogue never changes, only the note that a newer one took its place.
SELECT tallywing_protect('equipment_types', 'SELECT, INSERT');
GRANT UPDATE (superseded_by) ON equipment_types TO tallywing_app;

-- Three questions are asked before an organisation is known. They run as a role that may read just these columns.
GRANT SELECT (organisation_id, name) ON organisations TO tallywing_door;
GRANT SELECT (organisation_id, id, email, name, password_hash, role, operator_id, active) ON members TO tallywing_door;
GRANT SELECT (organisation_id, id, member_id, last_seen_at, expires_at, revoked_at) ON sessions TO tallywing_door;
CREATE POLICY door ON organisations FOR SELECT TO tallywing_door USING (true);
CREATE POLICY door ON members FOR SELECT TO tallywing_door USING (true);
CREATE POLICY door ON sessions FOR SELECT TO tallywing_door USING (true);

-- Who may this address be? The hash is compared outside; one address may be known to several organisations.
CREATE FUNCTION door_members(address text)
RETURNS TABLE (organisation_id text, organisation_name text, member_id text, password_hash text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT m.organisation_id, o.name, m.id, m.password_hash
  FROM public.members m JOIN public.organisations o ON o.organisation_id = m.organisation_id
  WHERE m.email = address AND m.active
  ORDER BY m.organisation_id
  LIMIT 5
$$;

-- Who holds this session at this moment?
CREATE FUNCTION door_session(session_id text, at timestamptz)
RETURNS TABLE (organisation_id text, organisation_name text, member_id text, name text, email text, role text,
               operator_id text, last_seen_at timestamptz, expires_at timestamptz)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT s.organisation_id, o.name, m.id, m.name, m.email, m.role, m.operator_id, s.last_seen_at, s.expires_at
  FROM public.sessions s
  JOIN public.members m ON m.organisation_id = s.organisation_id AND m.id = s.member_id
  JOIN public.organisations o ON o.organisation_id = s.organisation_id
  WHERE s.id = session_id AND s.revoked_at IS NULL AND s.expires_at > at AND m.active
$$;

-- Whose turn is it? For work that goes over all organisations, one at a time.
CREATE FUNCTION door_organisations() RETURNS TABLE (organisation_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT o.organisation_id FROM public.organisations o ORDER BY o.organisation_id
$$;

GRANT CREATE ON SCHEMA public TO tallywing_door;
ALTER FUNCTION door_members(text) OWNER TO tallywing_door;
ALTER FUNCTION door_session(text, timestamptz) OWNER TO tallywing_door;
ALTER FUNCTION door_organisations() OWNER TO tallywing_door;
REVOKE CREATE ON SCHEMA public FROM tallywing_door;
REVOKE ALL ON FUNCTION door_members(text), door_session(text, timestamptz), door_organisations() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door_members(text), door_session(text, timestamptz), door_organisations() TO tallywing_app;
