-- CreateTable
CREATE TABLE "sign_in_failures" (
    "id" BIGSERIAL NOT NULL,
    "key" TEXT NOT NULL,
    "failed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_in_failures_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "sign_in_failures_key_failed_at_idx" ON "sign_in_failures"("key", "failed_at");

-- CreateIndex
CREATE INDEX "sign_in_failures_failed_at_idx" ON "sign_in_failures"("failed_at");

-- From here on by hand: what the schema language cannot say.

-- Who fails to sign in belongs to no organisation yet. The application can neither read nor change the table; it goes through the
-- three functions below, which count, add and forget.
ALTER TABLE sign_in_failures ENABLE ROW LEVEL SECURITY;
ALTER TABLE sign_in_failures FORCE ROW LEVEL SECURITY;
CREATE POLICY door ON sign_in_failures TO tallywing_door USING (true) WITH CHECK (true);
-- Written and emptied all day: vacuumed soon, or the counting would read what is long gone.
ALTER TABLE sign_in_failures SET (autovacuum_vacuum_scale_factor = 0.05);
GRANT SELECT, INSERT, DELETE, UPDATE ON sign_in_failures TO tallywing_door;
GRANT USAGE ON SEQUENCE sign_in_failures_id_seq TO tallywing_door;

-- For how long may nobody try with these keys? Each has a number of failures that it may have within the window.
CREATE FUNCTION door_sign_in_wait(keys text[], most integer[], at timestamptz, window_ms integer)
RETURNS TABLE (seconds integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT coalesce(max(greatest(1, ceil(extract(epoch FROM f.oldest - at) + window_ms / 1000.0))), 0)::integer
  FROM unnest(keys, most) AS asked (key, most)
  CROSS JOIN LATERAL (
    SELECT count(*) AS failures, min(known.failed_at) AS oldest FROM public.sign_in_failures known
    WHERE known.key = asked.key AND known.failed_at > at - window_ms * interval '1 millisecond'
  ) f
  WHERE f.failures >= asked.most
$$;

-- One more failure for each key. What is older than the window goes at the same time.
CREATE FUNCTION door_sign_in_failed(keys text[], at timestamptz, window_ms integer) RETURNS void
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  DELETE FROM public.sign_in_failures WHERE id IN (
    SELECT old.id FROM public.sign_in_failures old WHERE old.failed_at <= at - window_ms * interval '1 millisecond'
    LIMIT 1000 FOR UPDATE SKIP LOCKED);
  INSERT INTO public.sign_in_failures (key, failed_at) SELECT each.key, at FROM unnest(keys) AS each (key)
$$;

CREATE FUNCTION door_sign_in_succeeded(forgotten text) RETURNS void
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  DELETE FROM public.sign_in_failures WHERE id IN (
    SELECT past.id FROM public.sign_in_failures past WHERE past.key = forgotten FOR UPDATE SKIP LOCKED)
$$;

GRANT CREATE ON SCHEMA public TO tallywing_door;
ALTER FUNCTION door_sign_in_wait(text[], integer[], timestamptz, integer) OWNER TO tallywing_door;
ALTER FUNCTION door_sign_in_failed(text[], timestamptz, integer) OWNER TO tallywing_door;
ALTER FUNCTION door_sign_in_succeeded(text) OWNER TO tallywing_door;
REVOKE CREATE ON SCHEMA public FROM tallywing_door;
REVOKE ALL ON FUNCTION door_sign_in_wait(text[], integer[], timestamptz, integer),
  door_sign_in_failed(text[], timestamptz, integer), door_sign_in_succeeded(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door_sign_in_wait(text[], integer[], timestamptz, integer),
  door_sign_in_failed(text[], timestamptz, integer), door_sign_in_succeeded(text) TO tallywing_app;
