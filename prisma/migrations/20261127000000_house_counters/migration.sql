-- CreateTable
CREATE TABLE "house_counters" (
    "organisation_id" TEXT NOT NULL,
    "counter" INTEGER NOT NULL,

    CONSTRAINT "house_counters_pkey" PRIMARY KEY ("organisation_id")
);

-- From here on by hand: what the schema language cannot say.

-- Written with every piece of work: room beside each row keeps the writing within its page.
ALTER TABLE house_counters SET (fillfactor = 20);
SELECT tallywing_protect('house_counters', 'SELECT, INSERT, UPDATE');

-- Which of these sessions are still good at this moment, whose are they, and how far has their house come? Asked by each
-- process for everybody who has a board open there, before anything is told to anybody.
GRANT SELECT ON house_counters TO tallywing_door;
CREATE POLICY door ON house_counters FOR SELECT TO tallywing_door USING (true);

CREATE FUNCTION door_followers(session_ids text[], at timestamptz)
RETURNS TABLE (session_id text, organisation_id text, member_id text, name text, role text, operator_id text, counter integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT s.id, s.organisation_id, m.id, m.name, m.role, m.operator_id, coalesce(c.counter, 0)
  FROM public.sessions s
  JOIN public.members m ON m.organisation_id = s.organisation_id AND m.id = s.member_id
  LEFT JOIN public.house_counters c ON c.organisation_id = s.organisation_id
  WHERE s.id = ANY (session_ids) AND s.revoked_at IS NULL AND s.expires_at > at AND m.active
$$;

GRANT CREATE ON SCHEMA public TO tallywing_door;
ALTER FUNCTION door_followers(text[], timestamptz) OWNER TO tallywing_door;
REVOKE CREATE ON SCHEMA public FROM tallywing_door;
REVOKE ALL ON FUNCTION door_followers(text[], timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door_followers(text[], timestamptz) TO tallywing_app;
