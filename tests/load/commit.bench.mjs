// How long recording work takes, against a named baseline in the same run: an empty transaction that inserts one row.
// Starts the built API on a database of its own, filled with the demo.
import { randomUUID } from 'node:crypto';
import { accountOf, built, dataDirectory, freePort, Person, RECORD, spread, start, stop } from './processes.mjs';

const TIMES = Number(process.env.TIMES ?? 60);
const data = await dataDirectory('bench');
const port = await freePort();
const api = await start('main.js', { PORT: String(port), DATA_DIR: data.path, DEMO: 'on', WORKER: 'off' });

async function measure(name, work) {
  const times = [];
  for (let each = 0; each < TIMES; each += 1) {
    const began = performance.now();
    await work(each);
    times.push(performance.now() - began);
  }
  console.log(`${name}: ${spread(times)} (${TIMES} times)`);
}

try {
  const { openDatabase } = await import(built('database/open.js'));
  const { readSettings } = await import(built('settings.js'));
  const settings = readSettings({ ...process.env, DATA_DIR: data.path, DATABASE_URL: '' });
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

  const technician = await Person.signedIn(`http://127.0.0.1:${port}`, await accountOf(api, 'technician'));
  const { readyBoard } = await technician.data(
    '{ readyBoard(first: 1) { edges { node { revision aircraft { id } } } } }',
  );
  const [{ node }] = readyBoard.edges;
  const { aircraft } = await technician.data(
    'query ($id: ID!) { aircraft(id: $id) { meters { id hours timeInService } } }',
    node.aircraft,
  );
  const meter = aircraft.meters.find((each) => each.timeInService);
  let revision = node.revision;
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
    revision = (await technician.data(RECORD, { input })).commitChanges.revision;
  });
  await measure('ready board, all profiles, 50 aircraft', () =>
    technician.data(
      '{ readyBoard(hoursAhead: 2.5, first: 50) { counts { yes } edges { node { verdicts { ready because { text } } } } } }',
    ),
  );
} finally {
  await stop(api);
  await data.remove();
}
