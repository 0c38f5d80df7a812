import { gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type pg from 'pg';
import { recordOf } from '../../libs/rules/testing/builders.js';
import { inspector } from '../../libs/rules/testing/builders.js';
import { add, daysAgo, defineMeter, flyable, hold, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { asOwner } from './owner.js';
import { as } from './people.js';
import { shared } from './shared.js';

const entryFields = `number kind recordedAt by certificate { kind number } day dayAt job firstTogether lastTogether corrects correctedBy
  body names differences { place was is } effect { flights { flight was is } opened { subjectName text ruleId } closed { text ruleId } rules }`;
const history = `query ($id: ID!, $first: Int, $after: String, $from: Int) { aircraft(id: $id) { history(first: $first, after: $after, from: $from) {
  totalCount pageInfo { hasNextPage endCursor } edges { node { ${entryFields} } } } } }`;
const lookBack = `query ($id: ID!, $at: Instant, $entry: Int, $knowledge: Knowledge) { aircraft(id: $id) {
  asItStood(at: $at, entry: $entry, knowledge: $knowledge) { at knowledge entry entries later undated dossier
    today { rules flights { flight ready } open { ruleId text outcome } }
    shown { entry at rules zones rulesNow flights { flight ready } open { ruleId text } flightsDiffer { flight was is }
      operationsDiffer { flight } capabilitiesDiffer { capability was is } opened { ruleId text } closed { ruleId text }
      changed { was { text } is { text } } } } } }`;

let technician: Client;
let owner: pg.Client;

const entriesOf = async (id: string, variables: Record<string, unknown> = {}, client = technician): Promise<Data[]> =>
  (await client.data(history, { id, ...variables })).aircraft.history.edges.map((edge: Data) => edge.node);
const back = async (id: string, variables: Record<string, unknown> = {}): Promise<Data> =>
  (await technician.data(lookBack, { id, ...variables })).aircraft.asItStood;

async function record(id: string, revision: number, ...changes: readonly { readonly kind: string }[]): Promise<number> {
  const answer = await technician.record(id, revision, changes);
  expect(answer.errors).toBeUndefined();
  return answer.data.commitChanges.revision;
}

/** As if these entries, and what was shown with them, had been written down so many days ago. */
async function written(id: string, from: number, to: number, days: number): Promise<void> {
  await owner.query(
    `update changes set recorded_at = recorded_at - make_interval(days => $4) where aircraft_id = $1 and seq between $2 and $3`,
    [id, from, to, days],
  );
  await owner.query(
    `update assessments set created_at = created_at - make_interval(days => $4) where aircraft_id = $1 and revision between $2 and $3`,
    [id, from, to, days],
  );
}

const annual = recordOf({
  kind: 'annual-inspection',
  on: daysAgo(30),
  outcome: 'approved',
  agency: inspector,
  meters: [{ meter: 'tach', value: 99_000 }],
});
const noDay = `${daysAgo(5)}T12:00Z`;

beforeAll(async () => {
  technician = await as('technician@one.example');
  owner = await asOwner(shared);
});

afterAll(() => owner.end());

describe('the entries of an aircraft', () => {
  it('say who, when, as of which day and with which job, newest first, in pages, or from one on', async () => {
    let revision = await record('hist-a', 0, add('TW-E1Q', { operatorId: 'north' }), defineMeter());
    const { createJob } = await technician.data(
      'mutation { createJob(input: { aircraftId: "hist-a", title: "Morning round" }) { id } }',
    );
    const sent = await technician.ask(
      'mutation ($input: CommitChangesInput!) { commitChanges(input: $input) { revision } }',
      {
        input: {
          aircraftId: 'hist-a',
          expectedRevision: revision,
          key: 'history-of-a-job',
          jobId: createJob.id,
          changes: [{ meterRead: { meter: 'tach', dial: 100_000, asOf: noDay, by: 'Hangar log' } }],
        },
      },
    );
    expect(sent.errors).toBeUndefined();
    revision = sent.data.commitChanges.revision;
    const all = await entriesOf('hist-a');
    expect(all.map((entry) => [entry.number, entry.kind, entry.firstTogether, entry.lastTogether])).toEqual([
      [3, 'meter.read', 3, 3],
      [2, 'meter.define', 1, 2],
      [1, 'aircraft.add', 1, 2],
    ]);
    expect(all[0]).toMatchObject({
      by: 'Technician One',
      day: daysAgo(5),
      dayAt: noDay,
      job: 'Morning round',
      names: { tach: 'Tachometer' },
      differences: [{ place: 'readings', was: null, is: { value: 100_000, asOf: noDay, by: 'Hangar log' } }],
    });
    expect(all[1]).toMatchObject({ job: null, day: null });
    const page = (await technician.data(history, { id: 'hist-a', first: 2 })).aircraft.history;
    expect([page.totalCount, page.pageInfo.hasNextPage]).toEqual([3, true]);
    const rest = await entriesOf('hist-a', { first: 2, after: page.pageInfo.endCursor });
    expect(rest.map((entry) => entry.number)).toEqual([1]);
    expect((await entriesOf('hist-a', { from: 2 })).map((entry) => entry.number)).toEqual([2, 1]);
  });

  it('keep the certificate of the day on which they were written', async () => {
    const manager = await as('manager@one.example');
    const amend = (revision: number, number: string) =>
      manager.data(
        `mutation ($revision: Int!, $number: String) { amendPerson(input: { personId: "second", expectedRevision: $revision, name: "Second Technician", role: TECHNICIAN,
          certificate: { kind: MECHANIC, number: $number, ratings: [AIRFRAME] } }) { revision } }`,
        { revision, number },
      );
    const people = async (): Promise<number> =>
      (await manager.data('{ people { id revision } }')).people.find((each: Data) => each.id === 'second').revision;
    await amend(await people(), 'M-1');
    const second = await as('second@one.example');
    expect((await second.record('hist-c', 0, [add('TW-E3Q')])).errors).toBeUndefined();
    await amend(await people(), 'M-2');
    expect((await second.record('hist-c', 1, [defineMeter()])).errors).toBeUndefined();
    const numbers = (await entriesOf('hist-c')).map((entry) => entry.certificate?.number);
    expect(numbers).toEqual(['M-2', 'M-1']);
  });

  it('say which flights the work lost and won, and which findings it opened and closed', async () => {
    let revision = await record('hist-b', 0, add('TW-E2Q', { seats: 1 }), ...flyable());
    revision = await record('hist-b', revision, hold('h1', `${daysAgo(1)}T00:00Z`, null));
    await record('hist-b', revision, {
      kind: 'hold.lift',
      holdId: 'h1',
      at: `${daysAgo(0)}T00:00Z`,
      reason: 'Part arrived',
    } as never);
    const [lift, place] = await entriesOf('hist-b', { first: 2 });
    const flown = place.effect.flights.filter((each: Data) => each.was === 'YES' && each.is === 'NO');
    expect(flown.length).toBeGreaterThan(0);
    expect(place.effect.opened).toContainEqual(expect.objectContaining({ ruleId: 'held' }));
    expect(place.effect.opened.find((each: Data) => each.ruleId === 'held').text).toContain('Waiting for a part');
    expect(lift.effect.closed).toContainEqual(
      expect.objectContaining({ ruleId: 'held', text: expect.stringContaining('Waiting for a part') }),
    );
    expect(lift.effect.flights).toEqual(
      place.effect.flights.map((each: Data) => ({ flight: each.flight, was: each.is, is: each.was })),
    );
    expect(lift.names).toEqual({ h1: '“Waiting for a part”' });
  });

  it('point from a correction to what it corrects, and back', async () => {
    let revision = await record('hist-d', 0, add('TW-E4Q'), defineMeter(), readMeter(100_000, noDay));
    revision = await record('hist-d', revision, { kind: 'record.add', version: 1, record: annual } as never);
    revision = await record('hist-d', revision, {
      kind: 'record.correct',
      record: { ...annual, done: { date: daysAgo(20), at: null } },
      reason: 'The day was misread',
    } as never);
    await record('hist-d', revision, {
      kind: 'meter.correct',
      meter: 'tach',
      value: 99_000,
      asOf: noDay,
      by: 'Hangar log',
      reason: 'Two digits swapped',
    } as never);
    const links = (await entriesOf('hist-d')).map((entry) => [entry.number, entry.corrects, entry.correctedBy]);
    expect(links).toEqual([
      [6, 3, []],
      [5, 4, []],
      [4, null, [5]],
      [3, null, [6]],
      [2, null, []],
      [1, null, []],
    ]);
  });

  it('are not for dispatchers, another operator or another organisation', async () => {
    for (const email of ['dispatcher@one.example', 'north@one.example']) {
      const dispatcher = await as(email);
      for (const query of [history, lookBack])
        expect(await dispatcher.problem(query, { id: 'hist-a' })).toMatchObject({
          code: 'FORBIDDEN',
          action: 'aircraft.history',
        });
    }
    expect((await (await as('north@one.example')).data(lookBack, { id: 'hist-b' })).aircraft).toBeNull();
    const stranger = await as('manager@two.example');
    expect((await stranger.data(history, { id: 'hist-a' })).aircraft).toBeNull();
    expect((await stranger.data(lookBack, { id: 'hist-a' })).aircraft).toBeNull();
    const auditor = await as('auditor@one.example');
    expect((await entriesOf('hist-a', {}, auditor)).length).toBe(3);
    expect(await (await as(null)).problem(history, { id: 'hist-a' })).toMatchObject({ code: 'SIGNED_OUT' });
  });
});

describe('the record as it stood', () => {
  beforeAll(async () => {
    const revision = await record('hist-e', 0, add('TW-E5Q', { seats: 1 }), ...flyable().slice(0, 3));
    await record('hist-e', revision, { kind: 'record.add', version: 1, record: annual } as never);
    // All but the annual inspection was written down eight days ago; the inspection was done thirty days ago, written today.
    await written('hist-e', 1, revision, 8);
  });

  it('rests on what was written down then, or on what is known now about then', async () => {
    const at = noDay;
    const then = await back('hist-e', { at });
    expect(then).toMatchObject({ at, knowledge: 'THEN', entry: 4, entries: 4, later: [5], undated: 0 });
    expect(then.dossier.status.records).toEqual([]);
    expect(then.today.open.map((each: Data) => each.ruleId)).toContain('annual-inspection');
    const now = await back('hist-e', { at, knowledge: 'NOW' });
    expect(now).toMatchObject({ knowledge: 'NOW', entry: 4, entries: 5, later: [5] });
    expect(now.dossier.status.records).toHaveLength(1);
    expect(now.today.open.map((each: Data) => each.ruleId)).not.toContain('annual-inspection');
    // The day it was done, and the one before.
    const later = async (days: number): Promise<number[]> =>
      (await back('hist-e', { at: `${daysAgo(days)}T12:00Z`, knowledge: 'NOW' })).later;
    expect(await later(31)).not.toContain(5);
    expect(await later(30)).toContain(5);
  });

  it('shows what was shown with an entry; the same rules say the same of it', async () => {
    const told = await back('hist-e', { entry: 2 });
    // Four entries of one piece of work: nobody saw the record between them.
    expect(told).toMatchObject({ entry: 4, entries: 4 });
    expect(told.shown).toMatchObject({ entry: 4, flightsDiffer: [], opened: [], closed: [], changed: [] });
    expect([told.shown.operationsDiffer, told.shown.capabilitiesDiffer]).toEqual([[], []]);
    expect(told.shown.rules).toBe(told.shown.rulesNow);
    expect(told.shown.open.map((each: Data) => each.ruleId)).toContain('annual-inspection');
  });

  it('agrees with what was shown for every aircraft of the house whose rules have not changed', async () => {
    const { readyBoard } = await technician.data('{ readyBoard(first: 200) { edges { node { aircraft { id } } } } }');
    const ids: string[] = readyBoard.edges.map((edge: Data) => edge.node.aircraft.id);
    expect(ids.length).toBeGreaterThan(3);
    for (const id of ids.filter((each) => each.startsWith('hist-'))) {
      const { shown } = await back(id);
      expect([id, shown.flightsDiffer, shown.opened, shown.closed, shown.changed]).toEqual([id, [], [], [], []]);
    }
  });

  it('names every answer that other rules gave', async () => {
    await record('hist-f', 0, add('TW-E6Q', { seats: 1 }), ...flyable());
    const { rows } = await owner.query<{ body: Buffer }>(`select body from assessments where aircraft_id = 'hist-f'`);
    const body = JSON.parse(gunzipSync(rows[0]?.body ?? Buffer.alloc(0)).toString('utf8')) as Data;
    const [gone] = body.findings;
    const flight = body.verdicts.find((each: Data) => each.verdict.ready === 'yes');
    Object.assign(body, {
      of: { ...body.of, rules: '2020.1' },
      verdicts: body.verdicts.map((each: Data) =>
        each === flight ? { ...each, verdict: { ...each.verdict, ready: 'no' } } : each,
      ),
      findings: [
        ...body.findings.slice(1),
        {
          ...gone,
          key: 'old-rule|aircraft',
          ruleId: 'old-rule',
          subject: 'aircraft',
          text: 'A rule of then',
          subjectName: 'aircraft',
        },
      ],
      capabilities: { ...body.capabilities, fly: 'not-met' },
    });
    await owner.query(`update assessments set body = $1 where aircraft_id = 'hist-f'`, [
      gzipSync(JSON.stringify(body)),
    ]);
    const { shown } = await back('hist-f');
    expect(shown).toMatchObject({
      rules: '2020.1',
      flightsDiffer: [{ flight: flight.profile.name, was: 'NO', is: 'YES' }],
      opened: [{ ruleId: gone.ruleId }],
      closed: [{ ruleId: 'old-rule', text: 'A rule of then' }],
    });
    expect(shown.rulesNow).not.toBe('2020.1');
    expect(shown.capabilitiesDiffer).toEqual([{ capability: 'fly', was: 'NOT_MET', is: 'MET' }]);
  });

  it('is nothing before the first entry, and refuses moments to come and entries that are not there', async () => {
    expect(await back('hist-e', { at: `${daysAgo(60)}T12:00Z` })).toBeNull();
    expect(await technician.problem(lookBack, { id: 'hist-e', at: '2199-01-01T00:00Z' })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'at',
    });
    expect(await technician.problem(lookBack, { id: 'hist-e', entry: 99 })).toMatchObject({ code: 'NOT_FOUND' });
  });
});
