import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mechanic, pilot, readingsOf, recordOf, unitOf } from '../../libs/rules/testing/builders.js';
import { vorCheck } from '../../libs/rules/testing/sample-readings.js';
import { dateWords } from '../../libs/rules/src/words/dates.js';
import { add, daysAgo, defineMeter, flyable, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';

let manager: Client;
let technician: Client;
beforeAll(async () => {
  manager = await as('manager@two.example');
  technician = await as('technician@two.example');
  await technician.record('policy-plane', 0, [
    add('TW-PLC', { seats: 1 }),
    ...flyable(),
    defineMeter(),
    readMeter(100_000, `${daysAgo(12)}T12:00Z`),
  ]);
});

/** The day that it still is where days end last: a policy of that day counts at every base. */
const today = new Date(Date.now() - 11 * 3_600_000).toISOString().slice(0, 10);
const list = `{ housePolicies { kind version inForce versions { version from body reason setBy } } }`;
const set = `mutation ($input: SetHousePolicyInput!) { setHousePolicy(input: $input) {
  kind version inForce versions { version from body reason setBy } } }`;
const policy = async (kind: string): Promise<Data> =>
  (await manager.data(list)).housePolicies.find((each: Data) => each.kind === kind) as Data;

async function setPolicy(
  kind: string,
  body: Record<string, unknown>,
  more: Record<string, unknown> = {},
): Promise<Data> {
  const { version } = await policy(kind);
  const input = {
    kind,
    expectedVersion: version,
    from: today,
    reason: 'As the shop has agreed',
    ...body,
    ...more,
  };
  return (await manager.data(set, { input })).setHousePolicy as Data;
}
const none = { weakSource: { statuses: [], by: [] } };
const weak = { weakSource: { statuses: ['common-practice'], by: ['manager'] } };

// Other files ask the same house: what they ask must not hang on these policies.
afterAll(async () => {
  await setPolicy('weak-source', none);
  await setPolicy('reading-age', { readingAge: { days: 31, noticeDays: null } });
  await setPolicy('day-count', { dayCount: { count: 'usual' } });
  await judged();
});

/** The worker is told at once; on a busy machine it takes its time. */
async function judged(): Promise<void> {
  const end = Date.now() + 100_000;
  for (;;) {
    const { judgingAgain } = (await manager.data('{ judging { judgingAgain } }')).judging as Data;
    if (judgingAgain === 0) return;
    if (Date.now() > end) throw new Error('the house was not judged again');
    await new Promise((done) => setTimeout(done, 1000));
  }
}

describe('a policy of the house', () => {
  it('is set from a day on with a reason, kept in every version, and stands in the entries of the house', async () => {
    expect(await policy('day-count')).toEqual({ kind: 'day-count', version: 0, inForce: null, versions: [] });
    const first = await setPolicy('day-count', { dayCount: { count: 'earlier' } });
    expect(first).toMatchObject({ version: 1, inForce: 1 });
    const later = await setPolicy(
      'day-count',
      { dayCount: { count: 'usual' } },
      { from: daysAgo(-40), reason: 'Trial over' },
    );
    expect(later).toMatchObject({ version: 2, inForce: 1 });
    expect(later.versions).toEqual([
      { version: 2, from: daysAgo(-40), body: { count: 'usual' }, reason: 'Trial over', setBy: 'Manager Two' },
      {
        version: 1,
        from: today,
        body: { count: 'earlier' },
        reason: 'As the shop has agreed',
        setBy: 'Manager Two',
      },
    ]);
    const { houseEntries } = await manager.data(
      '{ houseEntries(first: 1) { edges { node { kind by subject { kind id } before after } } } }',
    );
    expect(houseEntries.edges[0].node).toEqual({
      kind: 'policy.set',
      by: 'Manager Two',
      subject: { kind: 'policy', id: 'day-count' },
      before: { from: today, count: 'earlier' },
      after: { from: daysAgo(-40), count: 'usual', reason: 'Trial over' },
    });
  });

  it.each([
    ['input.kind', { kind: 'colour-of-walls' }],
    ['input.from', { from: daysAgo(3) }],
    ['input.reason', { reason: ' ' }],
    ['input.dayCount', { dayCount: null }],
    ['input.dayCount.count', { dayCount: { count: 'longer' } }],
    ['input.readingAge.noticeDays', { kind: 'reading-age', readingAge: { days: 10, noticeDays: 11 } }],
    ['input.readingAge.days', { kind: 'reading-age', readingAge: { days: 0, noticeDays: null } }],
    ['input.weakSource.statuses.0', { kind: 'weak-source', weakSource: { statuses: ['verified'], by: ['manager'] } }],
    ['input.weakSource.by', { kind: 'weak-source', weakSource: { statuses: ['reading'], by: [] } }],
    ['input.weakSource.by.0', { kind: 'weak-source', weakSource: { statuses: ['reading'], by: ['owner'] } }],
  ])('names %s when it is wrong', async (field, wrong) => {
    const { version } = await policy('day-count');
    const input = {
      kind: 'day-count',
      expectedVersion: version,
      from: today,
      reason: 'x',
      dayCount: { count: 'usual' },
    };
    expect(await manager.problem(set, { input: { ...input, ...wrong } })).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('set by two managers at once is one version, and the other is told by whom', async () => {
    const { version } = await policy('day-count');
    const input = {
      kind: 'day-count',
      expectedVersion: version,
      from: daysAgo(-50),
      reason: 'x',
      dayCount: { count: 'usual' },
    };
    const answers = await Promise.all([1, 2].map(() => manager.ask(set, { input })));
    const failed = answers.flatMap(({ errors }) => errors ?? []);
    expect(failed.map(({ extensions }) => extensions)).toMatchObject([
      { code: 'STALE_REVISION', changedBy: 'Manager Two' },
    ]);
    expect((await policy('day-count')).version).toBe(version + 1);
  });

  it('is for managers to set, for auditors to read, and of one house alone', async () => {
    const input = {
      kind: 'day-count',
      expectedVersion: 0,
      from: today,
      reason: 'x',
      dayCount: { count: 'usual' },
    };
    expect(await technician.problem(set, { input })).toMatchObject({ code: 'FORBIDDEN' });
    expect(await technician.problem(list)).toMatchObject({ code: 'FORBIDDEN' });
    const auditor = await as('auditor@one.example');
    expect((await auditor.data(list)).housePolicies).toMatchObject(
      ['reading-age', 'day-count', 'weak-source'].map((kind) => ({ kind, version: 0, versions: [] })),
    );
    expect(await auditor.problem(set, { input })).toMatchObject({ code: 'FORBIDDEN' });
  });
});

describe('what policies do', () => {
  const state = async (id: string): Promise<Data> =>
    (
      await manager.data(`{ aircraft(id: "${id}") { revision judgingAgain
        verdicts { profile { id } ready standing because { key text } weakestSource }
        findings { ruleId effect text } due { meter readingEnds lastGoodDay what }
        wantsSaySo { result text status mayGive } sayings { id result by reason open } } }`)
    ).aircraft as Data;
  const vfr = (found: Data): Data =>
    found.verdicts.find((each: Data) => each.profile.id === 'vfr-cross-country') as Data;
  /** Any entry judges the aircraft with what is set now. */
  async function touch(id: string): Promise<Data> {
    const { revision } = await state(id);
    const note = {
      kind: 'completeness.state',
      version: 1,
      lists: [{ list: 'placards', stated: { asOf: daysAgo(1), by: 'x' } }],
    };
    expect((await technician.record(id, revision, [note])).errors).toBeUndefined();
    return await state(id);
  }

  it('another version has every aircraft judged again; until then no yes of the old one counts', async () => {
    await touch('policy-plane');
    expect(vfr(await state('policy-plane'))).toMatchObject({ ready: 'YES', weakestSource: 'common-practice' });
    await setPolicy('weak-source', weak);
    const again = await state('policy-plane');
    if (again.judgingAgain) expect(vfr(again).ready).toBe('CANNOT_TELL');
    expect(vfr(await touch('policy-plane'))).toMatchObject({ ready: 'CANNOT_TELL', standing: 'SAY_SO' });
  });

  it('a flight on a doubted source wants a say-so of whom the policy names; given, it counts and is an entry', async () => {
    await setPolicy('weak-source', weak);
    const before = await touch('policy-plane');
    const results = before.wantsSaySo.map(({ result }: Data) => result as string) as string[];
    expect(results.length).toBeGreaterThan(0);
    expect(before.wantsSaySo[0]).toMatchObject({ status: 'common-practice', mayGive: true });
    expect(vfr(before).because[0].text).toContain('wants the say-so of a named person');

    const give = `mutation ($input: GiveSaySoInput!) { giveSaySo(input: $input) { revision } }`;
    const until = `${daysAgo(-5)}T12:00Z`;
    const input = { aircraftId: 'policy-plane', key: `say-${randomUUID()}`, results, reason: 'Read it up', until };
    expect(await technician.problem(give, { input })).toMatchObject({ code: 'FORBIDDEN' });
    expect(await manager.problem(give, { input: { ...input, until: `${daysAgo(1)}T12:00Z` } })).toMatchObject({
      field: 'input.until',
    });
    expect(await manager.problem(give, { input: { ...input, results: ['held|aircraft'] } })).toMatchObject({
      field: 'input.results.0',
    });
    const byHand = {
      kind: 'say-so.give',
      version: 1,
      sayso: { id: 's', rule: 'x', subject: 'x', by: 'x', reason: 'x', from: until, until: `${daysAgo(-6)}T12:00Z` },
    };
    expect((await manager.record('policy-plane', before.revision, [byHand])).errors?.[0]?.extensions).toMatchObject({
      code: 'REFUSED',
    });

    await manager.data(give, { input });
    const after = await state('policy-plane');
    expect(vfr(after)).toMatchObject({ ready: 'YES', standing: 'JUDGED' });
    expect(after.wantsSaySo).toEqual([]);
    expect(after.sayings).toHaveLength(results.length);
    expect(after.sayings[0]).toMatchObject({ by: 'Manager Two', reason: 'Read it up', open: true });

    const end = `mutation ($input: EndSaySoInput!) { endSaySo(input: $input) { revision } }`;
    const first = {
      aircraftId: 'policy-plane',
      key: `end-${randomUUID()}`,
      saySoId: after.sayings[0].id,
      reason: 'Not sure any more',
    };
    await manager.data(end, { input: first });
    expect(vfr(await state('policy-plane'))).toMatchObject({ ready: 'CANNOT_TELL', standing: 'SAY_SO' });
    await setPolicy('weak-source', none);
    expect(vfr(await touch('policy-plane'))).toMatchObject({ ready: 'YES' });
  });

  it('an old reading is remarked on, and what hangs on hours says from when it is too old', async () => {
    await technician.record('policy-hours', 0, [
      add('TW-PLH', { seats: 1 }),
      ...flyable(),
      defineMeter(),
      readMeter(100_000, `${daysAgo(12)}T12:00Z`),
      {
        kind: 'recurring.set',
        version: 1,
        item: {
          id: 'oil',
          name: 'Oil',
          origin: 'own',
          document: null,
          toleranceFor: 'none',
          subject: 'aircraft',
          combine: 'first',
          countFrom: 'done',
          parts: [{ kind: 'hours', count: 5_000, meter: 'tach', tolerance: null }],
        },
      },
      {
        kind: 'record.add',
        version: 1,
        record: recordOf({
          kind: 'own-item',
          subjects: ['oil'],
          on: daysAgo(20),
          agency: mechanic,
          meters: [{ meter: 'tach', value: 98_000 }],
        }),
      },
    ] as never);
    await setPolicy('reading-age', { readingAge: { days: 20, noticeDays: 10 } });
    const good = `${daysAgo(-8)}T12:00Z`;
    const found = await touch('policy-hours');
    expect(found.findings).toContainEqual({
      ruleId: 'reading-age',
      effect: 'ADVICE',
      text: `Tachometer: last read ${dateWords(daysAgo(12))}, longer ago than the house wants; limits in hours hang on it.`,
    });
    const sheet = await manager.data(
      '{ meterSheet(filter: { text: "TW-PLH" }) { edges { node { readingGoodForDays meters { goodBefore } } } } }',
    );
    const byHours = found.due.filter(({ meter }: Data) => meter === 'tach') as Data[];
    expect(new Set(byHours.map(({ readingEnds }) => readingEnds as string))).toEqual(new Set([good]));
    expect(sheet.meterSheet.edges[0].node).toEqual({ readingGoodForDays: 20, meters: [{ goodBefore: good }] });
  });

  it('the earlier count of days takes a day from a check, and the stored assessment says by which policy', async () => {
    const unit = unitOf({ id: 'nav1', name: 'Receiver 1', functions: ['vor-receiver'] });
    const check = recordOf({
      kind: 'vor-check',
      subjects: ['nav1'],
      on: daysAgo(4),
      place: 'Test field',
      agency: pilot,
      readings: readingsOf({ vor: vorCheck('test-signal', 0, 1) }),
    });
    const answer = await technician.record('policy-vor', 0, [
      add('TW-PLV', { seats: 1 }),
      { kind: 'unit.install', version: 1, unit, performed: { date: daysAgo(9), at: null }, touched: [] },
      { kind: 'record.add', version: 1, record: check },
    ] as never);
    expect(answer.errors).toBeUndefined();
    // In force from today; from the fortieth day on the house counts as usual again, which is after this check.
    expect(await policy('day-count')).toMatchObject({ inForce: 1 });
    const checked = (await state('policy-vor')).due.find(({ what }: Data) => what === 'vor-check') as Data;
    expect(checked.lastGoodDay).toBe(daysAgo(4 - 29));
    const { shown } = (await manager.data('{ aircraft(id: "policy-vor") { shown(entry: 3) { body } } }')).aircraft;
    const stamped = shown.body.of.policies.filter(({ kind }: Data) => kind === 'day-count') as Data[];
    expect(stamped[0]).toEqual({ kind: 'day-count', version: 1, from: today, body: { count: 'earlier' } });
  });
});
