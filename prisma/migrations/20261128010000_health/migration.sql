-- Whether these tables are those of the software that serves can be asked at any time, not only at the start.
GRANT SELECT (migration_name, finished_at, rolled_back_at) ON _prisma_migrations TO tallywing_app;
