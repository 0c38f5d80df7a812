import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Dossier } from '../../libs/rules/src/index.js';
import { admit, apply, assess } from '../../libs/rules/src/index.js';
import { add, daysAgo, defineMeter, flyable, hold, readMeter } from './cast.js';
import type { Client } from './client.js';
import { changeInput } from './inputs.js';
import { asOwner } from './owner.js';
import { as } from './people.js';
import { shared } from './shared.js';

let technician: Client;
let manager: Client;
beforeAll(async () => {
  technician = await as('technician@one.example');
  manager = await as('manager@one.example');
});

let count = 0;
/** An aircraft of its own for each test, with one meter that stands at 1,000.0 h. */
async function newAircraft(): Promise<{ id: string; registration: string; revision: number }> {
  count += 1;
  const registration = `TW-R${count}Q`;
  const id = `rec-${count}`;
  const answer = await technician.record(id, 0, [
    add(registration),
    defineMeter(),
    readMeter(100_000, `${daysAgo(10)}T12:00Z`),
  ]);
  expect(answer.errors).toBeUndefined();
  return { id, registration, revision: answer.data.commitChanges.revision };
}

const firstProblem = (answer: Awaited<ReturnType<Client['record']>>) => answer.errors?.[0]?.extensions;

describe('recording work', () => {
  it('adds an aircraft and answers with its entries', async () => {
    const answer = await technician.record('rec-first', 0, [add('TW-F1Q'), defineMeter()]);
    expect(answer.errors).toBeUndefined();
    expect(answer.data.commitChanges).toMatchObject({
      revision: 2,
      firstEntry: 1,
      lastEntry: 2,
      aircraft: { registration: 'TW-F1Q', revision: 2 },
    });
    const { aircraft } = await technician.data(
      '{ aircraft(id: "rec-first") { history { totalCount edges { node { number kind by } } } } }',
    );
    expect(aircraft.history).toEqual({
      totalCount: 2,
      edges: [
        { node: { number: 2, kind: 'meter.define', by: 'Technician One' } },
        { node: { number: 1, kind: 'aircraft.add', by: 'Technician One' } },
      ],
    });
  });

  it('lets the verdict appear together with the entry', async () => {
    const { id, revision } = await newAircraft();
    const answer = await technician.record(id, revision, [hold('h1', `${daysAgo(1)}T00:00Z`, null)]);
    expect(answer.data.commitChanges.opened).toContain('held|h1');
    const { aircraft } = await technician.data(
      `{ aircraft(id: "${id}") { findings { key text effect } verdicts { standing ready } } }`,
    );
    expect(aircraft.findings).toContainEqual(expect.objectContaining({ key: 'held|h1', effect: 'STOPS_AIRCRAFT' }));
    expect(
      aircraft.verdicts.every(
        (each: { standing: string; ready: string }) => each.standing === 'HELD' && each.ready === 'NO',
      ),
    ).toBe(true);
  });

  it('records exactly what the same functions foresaw in the browser', async () => {
    const id = 'rec-foreseen';
    const started = await technician.record(id, 0, [
      add('TW-FSQ', { seats: 1 }),
      defineMeter(),
      readMeter(100_000, `${daysAgo(10)}T12:00Z`),
    ]);
    const revision: number = started.data.commitChanges.revision;
    const seen =
      '{ dossier catalogue verdicts(at: $at) { profile { id } ready standing by because { key } changesAt hoursLeft topFt } }';
    const question = `query ($id: ID!, $at: Instant) { profiles { id conditions } aircraft(id: $id) ${seen} }`;
    const at = `${daysAgo(0)}T00:00Z`;
    const { profiles, aircraft: before } = await technician.data(question, { id, at });
    const changes = [
      ...flyable(),
      readMeter(100_450, `${daysAgo(1)}T12:00Z`),
      hold('h1', `${daysAgo(-3)}T00:00Z`, null),
    ];
    expect(
      changes.flatMap((change, index) =>
        admit(changes.slice(0, index).reduce(apply, before.dossier), before.catalogue, change),
      ),
    ).toEqual([]);
    const foreseen: Dossier = changes.reduce(apply, before.dossier as Dossier);

    const answer = await technician.record(id, revision, changes);
    expect(answer.errors).toBeUndefined();
    const { aircraft: after } = await technician.data(question, { id, at });
    expect(after.dossier).toEqual(foreseen);
    expect(profiles.length).toBeGreaterThan(3);
    for (const { id: profile, conditions } of profiles) {
      const verdict = assess(foreseen, after.catalogue, { instant: at }, conditions).operations['flight'];
      const told = after.verdicts.find((each: { profile: { id: string } }) => each.profile.id === profile);
      expect({
        ready: told.ready.toLowerCase().replace('_', '-'),
        standing: told.standing.toLowerCase().replace('_', '-'),
        by: told.by,
        changesAt: told.changesAt,
        hoursLeft: told.hoursLeft,
        topFt: told.topFt,
      }).toEqual({
        ready: verdict?.ready,
        standing: verdict?.standing,
        by: verdict?.by,
        changesAt: verdict?.changesAt ?? null,
        hoursLeft: verdict?.hoursLeft === undefined ? null : verdict.hoursLeft / 100,
        topFt: verdict?.topFt ?? null,
      });
      if (verdict?.ready !== 'yes')
        expect(told.because.map((each: { key: string }) => each.key)).toEqual(verdict?.because);
    }
    // Both answers are among them: a comparison of nothing but "no" would prove little.
    expect(new Set(after.verdicts.map((each: { ready: string }) => each.ready))).toContain('YES');
  });

  it('refuses an outdated revision, naming the present one and who made it', async () => {
    const { id, revision } = await newAircraft();
    await manager.record(id, revision, [readMeter(100_100, `${daysAgo(5)}T12:00Z`)]);
    const answer = await technician.record(id, revision, [readMeter(100_200, `${daysAgo(4)}T12:00Z`)]);
    expect(firstProblem(answer)).toMatchObject({
      code: 'STALE_REVISION',
      revision: revision + 1,
      changedBy: 'Manager One',
    });
    const { aircraft } = await technician.data(`{ aircraft(id: "${id}") { revision meters { hours } } }`);
    expect(aircraft).toEqual({ revision: revision + 1, meters: [{ hours: 1001 }] });
  });

  it('answers a repeated request as before, and does nothing more', async () => {
    const { id, revision } = await newAircraft();
    const key = randomUUID();
    const changes = [readMeter(100_300, `${daysAgo(3)}T12:00Z`)];
    const first = await technician.record(id, revision, changes, key);
    const again = await technician.record(id, revision, changes, key);
    expect(again.errors).toBeUndefined();
    expect(again.data).toEqual(first.data);
    const { aircraft } = await technician.data(`{ aircraft(id: "${id}") { revision } }`);
    expect(aircraft.revision).toBe(revision + 1);
  });

  it('refuses a key that was used for something else, or by somebody else', async () => {
    const { id, revision } = await newAircraft();
    const key = randomUUID();
    const changes = [readMeter(100_300, `${daysAgo(3)}T12:00Z`)];
    await technician.record(id, revision, changes, key);
    expect(
      firstProblem(await technician.record(id, revision + 1, [readMeter(100_400, `${daysAgo(2)}T12:00Z`)], key)),
    ).toMatchObject({ code: 'KEY_REUSED', field: 'input.key' });
    expect(firstProblem(await manager.record(id, revision, changes, key))).toMatchObject({ code: 'KEY_REUSED' });
  });

  it('lets only one of two at the same moment through, and one of two retries twice', async () => {
    const { id, revision } = await newAircraft();
    const race = await Promise.all(
      [1, 2, 3, 4].map((each) =>
        technician.record(id, revision, [readMeter(100_300 + each, `${daysAgo(3)}T12:0${each}Z`)]),
      ),
    );
    expect(race.map((answer) => firstProblem(answer)?.code ?? 'recorded').sort()).toEqual([
      'STALE_REVISION',
      'STALE_REVISION',
      'STALE_REVISION',
      'recorded',
    ]);
    const key = randomUUID();
    const same = await Promise.all(
      [1, 2, 3].map(() => technician.record(id, revision + 1, [readMeter(100_400, `${daysAgo(2)}T12:00Z`)], key)),
    );
    expect(same.map((answer) => answer.data?.commitChanges.revision)).toEqual([
      revision + 2,
      revision + 2,
      revision + 2,
    ]);
  });

  it('gives one registration to one of two who add it at the same moment', async () => {
    const both = await Promise.all(['rec-same-a', 'rec-same-b'].map((id) => technician.record(id, 0, [add('TW-SMQ')])));
    expect(both.filter((answer) => answer.errors === undefined).length).toBe(1);
    expect(firstProblem(both.find((answer) => answer.errors !== undefined) as never)).toMatchObject({
      code: 'REFUSED',
      field: 'input.changes.0.aircraft.registration',
    });
  });

  it('refuses work of a plan that was given up', async () => {
    const { id, revision } = await newAircraft();
    const { createJob } = await technician.data(
      `mutation { createJob(input: { aircraftId: "${id}", title: "Look at it" }) { id revision } }`,
    );
    const work = {
      aircraftId: id,
      expectedRevision: revision,
      key: randomUUID(),
      changes: [changeInput(readMeter(100_100, `${daysAgo(1)}T12:00Z`))],
      jobId: createJob.id,
    };
    const elsewhere = await newAircraft();
    expect(firstProblem(await technician.send({ ...work, aircraftId: elsewhere.id }))).toMatchObject({
      code: 'NOT_FOUND',
      field: 'input.jobId',
    });
    expect(firstProblem(await technician.send({ ...work, jobId: 'no-such-job' }))).toMatchObject({
      code: 'NOT_FOUND',
      field: 'input.jobId',
    });
    expect((await technician.send(work)).errors).toBeUndefined();
  });

  it('leaves a record alone that a newer version of the program wrote', async () => {
    const { id, revision } = await newAircraft();
    const owner = await asOwner(shared);
    try {
      await owner.query('update aircraft set dossier_schema = 99 where id = $1', [id]);
      const answer = await technician.record(id, revision, [readMeter(100_100, `${daysAgo(1)}T12:00Z`)]);
      expect(firstProblem(answer)).toMatchObject({ code: 'UNAVAILABLE' });
      expect(answer.errors?.[0]?.message).toMatch(/newer version of the program/);
      expect((await technician.problem(`{ aircraft(id: "${id}") { dossier } }`)).code).toBe('UNAVAILABLE');
    } finally {
      await owner.query('update aircraft set dossier_schema = 1 where id = $1', [id]);
      await owner.end();
    }
  });

  it('takes all changes of a request or none', async () => {
    const { id, revision } = await newAircraft();
    const answer = await technician.record(id, revision, [
      readMeter(100_500, `${daysAgo(2)}T12:00Z`),
      readMeter(100_400, `${daysAgo(1)}T12:00Z`),
    ]);
    expect(firstProblem(answer)).toMatchObject({ code: 'REFUSED', field: 'input.changes.1.dial' });
    const { aircraft } = await technician.data(`{ aircraft(id: "${id}") { revision meters { hours } } }`);
    expect(aircraft).toEqual({ revision, meters: [{ hours: 1000 }] });
  });

  it('keeps what was shown with each entry', async () => {
    const { id, revision } = await newAircraft();
    await technician.record(id, revision, [hold('h1', `${daysAgo(1)}T00:00Z`, null)]);
    await technician.record(id, revision + 1, [
      { kind: 'hold.lift', version: 1, holdId: 'h1', at: `${daysAgo(0)}T00:00Z`, reason: 'Part arrived' } as never,
    ]);
    const { aircraft } = await technician.data(
      `{ aircraft(id: "${id}") { then: shown(entry: ${revision + 1}) { entry body } now: shown(entry: ${revision + 2}) { entry body } } }`,
    );
    const outcome = (shown: { body: { results: { key: string; outcome: string }[] } }) =>
      shown.body.results.find((each) => each.key === 'held|h1')?.outcome;
    expect(aircraft.then.entry).toBe(revision + 1);
    expect(outcome(aircraft.then)).toBe('not-met');
    expect(['met', 'not-applicable']).toContain(outcome(aircraft.now));
    expect(aircraft.then.body.verdicts[0].verdict).toMatchObject({ standing: 'held', ready: 'no' });
  });
});

describe('wrong input names the field and the way out', () => {
  const cases: [string, (id: string, revision: number) => Promise<unknown>, Record<string, unknown>][] = [
    [
      'hours that run backwards',
      (id, revision) => technician.record(id, revision, [readMeter(99_999, `${daysAgo(1)}T12:00Z`)]),
      { code: 'REFUSED', field: 'input.changes.0.dial' },
    ],
    [
      'negative hours',
      (id, revision) => technician.record(id, revision, [readMeter(-1, `${daysAgo(1)}T12:00Z`)]),
      { code: 'REFUSED', field: 'input.changes.0.dial' },
    ],
    [
      'hours with a fraction',
      (id, revision) => technician.record(id, revision, [readMeter(100_000.5, `${daysAgo(1)}T12:00Z`)]),
      { code: 'BAD_INPUT', field: 'input.changes.0.meterRead.dial' },
    ],
    [
      'a day that does not exist',
      (id, revision) => technician.record(id, revision, [readMeter(100_100, '2026-02-30T12:00Z')]),
      { code: 'REFUSED', field: 'input.changes.0.asOf' },
    ],
    [
      'a time that has not come',
      (id, revision) => technician.record(id, revision, [readMeter(100_100, `${daysAgo(-3)}T12:00Z`)]),
      { code: 'REFUSED', field: 'input.changes.0.asOf' },
    ],
    [
      'an unknown meter',
      (id, revision) => technician.record(id, revision, [readMeter(1, `${daysAgo(1)}T12:00Z`, 'hobbs')]),
      { code: 'REFUSED', field: 'input.changes.0.meter' },
    ],
    [
      'an unknown hold',
      (id, revision) =>
        technician.record(id, revision, [
          { kind: 'hold.lift', holdId: 'nowhere', at: '2026-01-01T00:00Z', reason: 'x' } as never,
        ]),
      { code: 'REFUSED', field: 'input.changes.0.holdId' },
    ],
    [
      'an unknown operator',
      (_, __) => technician.record('rec-op', 0, [add('TW-OPQ', { operatorId: 'nobody' })]),
      { code: 'REFUSED', field: 'input.changes.0.aircraft.operatorId' },
    ],
    [
      'an unknown zone',
      () => technician.record('rec-zone', 0, [add('TW-ZZQ', { base: { id: 'b', name: 'b', zone: 'Mars/Base' } })]),
      { code: 'REFUSED', field: 'input.changes.0.aircraft.base.zone' },
    ],
    [
      'a registration that is taken',
      (id) =>
        technician
          .data(`{ aircraft(id: "${id}") { registration } }`)
          .then(({ aircraft }) => technician.record('rec-twice', 0, [add(aircraft.registration)])),
      { code: 'REFUSED', field: 'input.changes.0.aircraft.registration' },
    ],
    [
      'an unknown aircraft',
      () => technician.record('rec-none', 3, [readMeter(1, `${daysAgo(1)}T12:00Z`)]),
      { code: 'NOT_FOUND', field: 'input.aircraftId' },
    ],
    [
      'a first entry that adds nothing',
      () => technician.record('rec-none', 0, [readMeter(1, `${daysAgo(1)}T12:00Z`)]),
      { code: 'REFUSED', field: 'input.changes.0' },
    ],
    [
      'no change at all',
      (id, revision) => technician.record(id, revision, []),
      { code: 'BAD_INPUT', field: 'input.changes' },
    ],
    [
      'a key that is too short',
      (id, revision) => technician.record(id, revision, [readMeter(100_100, `${daysAgo(1)}T12:00Z`)], 'short'),
      { code: 'BAD_INPUT', field: 'input.key' },
    ],
    [
      'a negative revision',
      (id) => technician.record(id, -1, [readMeter(100_100, `${daysAgo(1)}T12:00Z`)]),
      { code: 'BAD_INPUT', field: 'input.expectedRevision' },
    ],
    [
      'an impossible aircraft id',
      () => technician.record('no spaces', 0, [add('TW-SPQ')]),
      { code: 'BAD_INPUT', field: 'input.aircraftId' },
    ],
    [
      'two kinds in one change',
      (id, revision) =>
        technician.send({
          aircraftId: id,
          expectedRevision: revision,
          key: randomUUID(),
          changes: [
            { ...changeInput(hold('h', '2026-01-01T00:00Z', null)), ...changeInput(readMeter(1, '2026-01-01T00:00Z')) },
          ],
        }),
      { code: 'BAD_INPUT', field: 'input.changes.0' },
    ],
    [
      'a word that is not on the list',
      (id, revision) =>
        technician.send({
          aircraftId: id,
          expectedRevision: revision,
          key: randomUUID(),
          changes: [{ workDone: { what: 'x', touched: ['ROOF'], performed: { date: '2026-01-01' } } }],
        }),
      { code: 'BAD_INPUT', field: 'input.changes.0.workDone.touched.0' },
    ],
    ...['\u0000', '\ud800'].map((character, which): (typeof cases)[number] => [
      `text that no database keeps: ${['a null character', 'half a character'][which]}`,
      (id, revision) =>
        technician.record(id, revision, [
          {
            kind: 'hold.place',
            version: 1,
            hold: {
              id: 'h',
              reason: `Waiting${character}`,
              by: 'Hangar log',
              from: `${daysAgo(1)}T00:00Z`,
              until: null,
            },
          } as never,
        ]),
      { code: 'BAD_INPUT', field: 'input' },
    ]),
    [
      'a field that does not exist',
      (id, revision) =>
        technician.send({
          aircraftId: id,
          expectedRevision: revision,
          key: randomUUID(),
          changes: [{ holdLift: { holdId: 'h', at: '2026-01-01T00:00Z', reason: 'x', colour: 'red' } }],
        }),
      { code: 'BAD_INPUT', field: 'input.changes.0.holdLift' },
    ],
  ];
  it.each(cases)('%s', async (_, attempt, expected) => {
    const { id, revision } = await newAircraft();
    const answer = (await attempt(id, revision)) as Awaited<ReturnType<Client['record']>>;
    expect(answer.data?.commitChanges).toBeUndefined();
    const problem = answer.errors?.[0];
    expect(problem?.extensions).toMatchObject(expected);
    expect(problem?.extensions.wayOut).toMatch(/\w{3}/);
    expect(problem?.message).not.toMatch(/undefined|\{|\[object|at .*\.js/);
    const { aircraft } = await technician.data(`{ aircraft(id: "${id}") { revision } }`);
    expect(aircraft.revision).toBe(revision);
  });
});

describe('the record', () => {
  it('replays to what is stored, for every aircraft', async () => {
    const replayed = spawnSync(
      process.execPath,
      [fileURLToPath(new URL('../../apps/api/dist/aircraft/rebuild-cli.js', import.meta.url))],
      {
        env: { ...process.env, DATA_DIR: shared.dataDir, DATABASE_URL: '' },
        encoding: 'utf8',
      },
    );
    expect(replayed.stdout).toMatch(/tallywing: [1-9]\d* aircraft replayed, 0 different/);
    expect(replayed.status).toBe(0);
  });
});
