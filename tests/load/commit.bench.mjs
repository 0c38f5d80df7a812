// How long recording work takes, against a named baseline in the same run: an empty transaction that inserts one row.
// Starts the built API on a database of its own, filled with the demo.
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const TIMES = Number(process.env.TIMES ?? 60);
const built = (path) => new URL(`../../apps/api/dist/${path}`, import.meta.url);

const freePort = () =>
  new Promise((done) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => done(port));
    });
  });

const dataDir = await mkdtemp(join(tmpdir(), 'tallywing-bench-'));
await chmod(dataDir, 0o711);
const port = await freePort();
const api = spawn(process.execPath, [built('main.js').pathname], {
  env: {
    ...process.env,
    PORT: String(port),
    HOST: '127.0.0.1',
    DATA_DIR: dataDir,
    DATABASE_URL: '',
    DEMO: 'on',
    REQUESTS_PER_MINUTE: '1000000',
  },
  stdio: ['ignore', 'pipe', 'inherit'],
});
const account = await new Promise((done, fail) => {
  let output = '';
  api.stdout.on('data', (chunk) => {
    output += chunk;
    const found = /tallywing: demo account: (technician@\S+) {2}(\S+)/.exec(output);
    if (found) done({ email: found[1], password: found[2] });
  });
  api.once('exit', () => fail(new Error(output)));
});

let cookie = '';
async function ask(query, variables = {}) {
  const response = await fetch(`http://127.0.0.1:${port}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify({ query, variables }),
  });
  const [set] = response.headers.getSetCookie();
  if (set) cookie = set.split(';')[0];
  const { data, errors } = await response.json();
  if (errors) throw new Error(JSON.stringify(errors));
  return data;
}

async function measure(name, work) {
  const times = [];
  for (let each = 0; each < TIMES; each += 1) {
    const began = performance.now();
    await work(each);
    times.push(performance.now() - began);
  }
  times.sort((a, b) => a - b);
  const at = (share) => times[Math.min(times.length - 1, Math.floor(times.length * share))].toFixed(1);
  console.log(`${name}: median ${at(0.5)} ms, p95 ${at(0.95)} ms (${TIMES} times)`);
}

try {
  const { openDatabase } = await import(built('database/open.js'));
  const { readSettings } = await import(built('settings.js'));
  const settings = readSettings({ ...process.env, DATA_DIR: dataDir, DATABASE_URL: '' });
  const opened = await openDatabase(settings, () => undefined);
  const [{ organisation_id: organisationId }] = await opened.database.askDoor('door_organisations', []);
  await measure('baseline: a transaction that inserts one row', () =>
    opened.database.withOrganisation({ organisationId }, (connection) =>
      connection.query('insert into events (organisation_id, kind, at, body) values ($1, $2, now(), $3)', [
        organisationId,
        'bench',
        '{}',
      ]),
    ),
  );
  await opened.close();

  await ask(
    'mutation ($email: String!, $password: String!) { signIn(email: $email, password: $password) { id } }',
    account,
  );
  const { readyBoard } = await ask('{ readyBoard(first: 1) { edges { node { revision aircraft { id } } } } }');
  const [{ node }] = readyBoard.edges;
  const { aircraft } = await ask(
    'query ($id: ID!) { aircraft(id: $id) { meters { id hours timeInService } } }',
    node.aircraft,
  );
  const meter = aircraft.meters.find((each) => each.timeInService);
  let revision = node.revision;
  const record = 'mutation ($input: CommitChangesInput!) { commitChanges(input: $input) { revision } }';
  await measure('recording one meter reading', async (each) => {
    const change = {
      meterRead: {
        meter: meter.id,
        dial: Math.round(meter.hours * 100) + each,
        asOf: `${new Date().toISOString().slice(0, 16)}Z`,
        by: 'bench',
      },
    };
    const input = { aircraftId: node.aircraft.id, expectedRevision: revision, key: randomUUID(), changes: [change] };
    revision = (await ask(record, { input })).commitChanges.revision;
  });
  await measure('ready board, all profiles, 50 aircraft', () =>
    ask(
      '{ readyBoard(hoursAhead: 2.5, first: 50) { counts { yes } edges { node { verdicts { ready because { text } } } } } }',
    ),
  );
} finally {
  api.kill('SIGTERM');
  await new Promise((done) => api.once('exit', done));
  await rm(dataDir, { recursive: true, force: true });
}
