// Compares the tables that the migrations make with prisma/schema.prisma. Needs a build; uses a database of its own.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const load = (path) => import(new URL(`../../apps/api/dist/database/${path}`, import.meta.url).href);
const { startEmbedded } = await load('embedded.js');
const { findDrift, migrate } = await load('migrate.js');

const directory = await mkdtemp(join(tmpdir(), 'tallywing-drift-'));
const server = await startEmbedded(directory);
try {
  await migrate(server.url);
  const drift = await findDrift(server.url);
  if (drift !== '') {
    console.error(`The migrations and prisma/schema.prisma differ. A new migration would have to do this:\n${drift}`);
    process.exitCode = 1;
  } else {
    console.log('migrations and schema agree');
  }
} finally {
  await server.release();
  await rm(directory, { recursive: true, force: true });
}
