-- CreateTable
CREATE TABLE "house_watches" (
    "organisation_id" TEXT NOT NULL,
    "noticed_to" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "house_watches_pkey" PRIMARY KEY ("organisation_id")
);

-- CreateTable
CREATE TABLE "time_notices" (
    "organisation_id" TEXT NOT NULL,
    "aircraft_id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "noticed_at" TIMESTAMPTZ(3) NOT NULL,
    "body" JSONB NOT NULL,

    CONSTRAINT "time_notices_pkey" PRIMARY KEY ("organisation_id","aircraft_id","at","kind","subject")
);

-- CreateIndex
CREATE INDEX "time_notices_organisation_id_at_idx" ON "time_notices"("organisation_id", "at");

-- From here on by hand: what the schema language cannot say.

SELECT tallywing_protect('house_watches', 'SELECT, INSERT, UPDATE');
-- What was noticed stays.
SELECT tallywing_protect('time_notices', 'SELECT, INSERT');

-- The queue of the worker lies in a schema of its own and belongs to a role of its own: the application can put a wish into it
-- through the function below, and neither read nor change what is in it. The library makes its tables there itself; it begins
-- with this one, which it would otherwise make together with the schema.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'tallywing_queue') THEN
    CREATE ROLE tallywing_queue NOLOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE;
  END IF;
  IF NOT pg_has_role(current_user, 'tallywing_queue', 'SET') THEN
    EXECUTE format('GRANT tallywing_queue TO %I', current_user);
  END IF;
END
$$;

CREATE SCHEMA tallywing_queue AUTHORIZATION tallywing_queue;
CREATE TABLE tallywing_queue.migrations (
  id int PRIMARY KEY,
  ts timestamptz NOT NULL DEFAULT now(),
  breaking boolean NOT NULL DEFAULT false
);
ALTER TABLE tallywing_queue.migrations OWNER TO tallywing_queue;

-- "What the verdicts of my organisation rest on is different." Takes no argument, so nobody can wish for another organisation.
CREATE FUNCTION tallywing_judge_again() RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  house text := nullif(current_setting('tallywing.organisation', true), '');
BEGIN
  IF house IS NULL THEN
    RAISE EXCEPTION 'no organisation is set';
  END IF;
  PERFORM tallywing_queue.add_job('watch-house', json_build_object('house', house), job_key => 'watch-house ' || house);
END
$$;
GRANT CREATE ON SCHEMA public TO tallywing_queue;
ALTER FUNCTION tallywing_judge_again() OWNER TO tallywing_queue;
REVOKE CREATE ON SCHEMA public FROM tallywing_queue;
REVOKE ALL ON FUNCTION tallywing_judge_again() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION tallywing_judge_again() TO tallywing_app;
