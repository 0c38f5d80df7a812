import { beforeAll, describe, expect, it } from 'vitest';
import type { Change } from '../../libs/rules/src/index.js';
import { radioStation, recordOf } from '../../libs/rules/testing/builders.js';
import { add, daysAgo } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';

const setFields =
  'id serial name inUse revision calibratedUntil calibrations { id checkedOn asFound goodUntil certificate struck }';
const addSet = `mutation ($serial: String!, $name: String!) { addTestSet(serial: $serial, name: $name) { ${setFields} } }`;
const amendSet = `mutation ($input: AmendTestSetInput!) { amendTestSet(input: $input) { ${setFields} } }`;
const addCheck = `mutation ($input: NewCalibrationInput!) { addCalibration(input: $input) { ${setFields} } }`;
const strike = `mutation ($input: StrikeCalibrationInput!) { strikeCalibration(input: $input) { ${setFields} } }`;
const trace = `query ($id: ID!, $first: Int, $after: String) { reverseTrace(calibrationId: $id, first: $first, after: $after) { from to totalCount
  testSet { serial } calibration { checkedOn } pageInfo { hasNextPage endCursor }
  edges { node { number kind done outcome signer aircraft { id registration } } } } }`;
const agencyFields = 'id kind name certificate ratings heldFrom heldUntil inUse revision';
const addAgency = `mutation ($input: NewAgencyInput!) { addAgency(input: $input) { ${agencyFields} } }`;
const amendAgency = `mutation ($input: AmendAgencyInput!) { amendAgency(input: $input) { ${agencyFields} } }`;
const choices =
  '{ workChoices { testSets { serial name calibratedUntil } agencies { kind name certificate ratings } } }';
const lastEntry = '{ houseEntries(first: 1) { edges { node { kind subject { name } after } } } }';

let manager: Client;
let technician: Client;
beforeAll(async () => {
  manager = await as('manager@one.example');
  technician = await as('technician@one.example');
});

let count = 0;
async function newSet(): Promise<Data> {
  count += 1;
  return (await manager.data(addSet, { serial: `TS-${count}`, name: 'Pitot-static test set' })).addTestSet;
}

const check = async (set: Data, checkedOn: string, more: Readonly<Record<string, unknown>> = {}): Promise<Data> => {
  const input = { testSetId: set.id, expectedRevision: set.revision, checkedOn, asFound: 'IN_TOLERANCE', ...more };
  return (await manager.data(addCheck, { input })).addCalibration;
};
const checkOn = (set: Data, checkedOn: string): string =>
  set.calibrations.find((each: Data) => each.checkedOn === checkedOn).id;

/** A static test of one aircraft, made with a set. */
const tested = (id: string, on: string, serial: string): Change => ({
  kind: 'record.add',
  version: 1,
  record: recordOf({
    id,
    kind: 'transponder-test',
    on,
    agency: radioStation,
    subjects: ['aircraft'],
    instrument: { serial, calibratedUntil: null },
  }),
});

describe('test sets', () => {
  it('are kept by the serial that entries name, each once', async () => {
    const set = await newSet();
    expect(set).toMatchObject({ inUse: true, revision: 1, calibratedUntil: null, calibrations: [] });
    expect(await manager.problem(addSet, { serial: set.serial.toLowerCase(), name: 'Other' })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'serial',
    });
    expect(await manager.problem(addSet, { serial: ' ', name: 'Other' })).toMatchObject({ field: 'serial' });
    const input = { testSetId: set.id, expectedRevision: 1, serial: set.serial, name: 'Ramp tester', inUse: false };
    expect((await manager.data(amendSet, { input })).amendTestSet).toMatchObject({ inUse: false, revision: 2 });
    expect(await manager.problem(amendSet, { input: { ...input, name: 'Late' } })).toMatchObject({
      code: 'STALE_REVISION',
    });
    expect((await manager.data('{ testSets { id name } }')).testSets).toContainEqual({
      id: set.id,
      name: 'Ramp tester',
    });
  });

  it.each([
    ['a day that has not come', { checkedOn: daysAgo(-2), goodUntil: daysAgo(-300) }, 'input.checkedOn'],
    ['an end before the check', { checkedOn: daysAgo(9), goodUntil: daysAgo(10) }, 'input.goodUntil'],
    ['no end, unless found out', { checkedOn: daysAgo(9) }, 'input.goodUntil'],
  ])('refuse %s', async (_, wrong, field) => {
    const set = await newSet();
    const input = { testSetId: set.id, expectedRevision: 1, asFound: 'IN_TOLERANCE', ...wrong };
    expect(await manager.problem(addCheck, { input })).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('go by the latest check that was not struck out', async () => {
    let set = await check(await newSet(), daysAgo(400), { goodUntil: daysAgo(35), certificate: 'C-1' });
    set = await check(set, daysAgo(30), { goodUntil: daysAgo(-335), certificate: 'C-2' });
    expect(set.calibratedUntil).toBe(daysAgo(-335));
    const input = {
      testSetId: set.id,
      expectedRevision: set.revision,
      calibrationId: checkOn(set, daysAgo(30)),
      reason: 'Certificate of another set',
    };
    const struck = (await manager.data(strike, { input })).strikeCalibration;
    expect(struck).toMatchObject({ calibratedUntil: daysAgo(35), revision: 4 });
    expect(struck.calibrations[0]).toMatchObject({ certificate: 'C-2', struck: 'Certificate of another set' });
    expect((await manager.data(lastEntry)).houseEntries.edges[0].node).toMatchObject({
      kind: 'test-set.strike',
      after: { checkedOn: daysAgo(30), reason: 'Certificate of another set' },
    });
    expect(await manager.problem(strike, { input: { ...input, expectedRevision: 4 } })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'input.calibrationId',
    });
  });
});

describe('found out of tolerance', () => {
  it('lists the entries of every aircraft since the last good calibration, corrected ones as they are now', async () => {
    const set = await newSet();
    const { serial } = set;
    const send = async (id: string, registration: string, changes: readonly Change[]) => {
      const answer = await technician.record(id, 0, [add(registration), ...changes]);
      expect(answer.errors).toBeUndefined();
      return answer;
    };
    await send('trace-a', 'TW-TRA', [
      tested('t1', daysAgo(401), serial), // the day before the last good calibration
      tested('t2', daysAgo(400), serial), // on its day: nobody knows which came first
      tested('t3', daysAgo(200), serial.toLowerCase()),
      tested('t4', daysAgo(150), 'another set'),
      // More of a kind than an aircraft's own record keeps.
      ...[140, 130, 120, 110, 100].map((days) => tested(`t-${days}`, daysAgo(days), serial)),
    ]);
    await send('trace-b', 'TW-TRB', [
      tested('t1', daysAgo(90), serial),
      tested('t2', daysAgo(80), serial),
      tested('t3', daysAgo(30), serial), // on the day it was found out
      tested('t4', daysAgo(29), serial), // after it was put right
    ]);
    const corrections = [
      // One named the wrong set, another has a new day only.
      { ...tested('t1', daysAgo(90), 'another set'), kind: 'record.correct', reason: 'Read the label again' },
      { ...tested('t2', daysAgo(81), serial), kind: 'record.correct', reason: 'Wrong day' },
    ] as unknown as readonly Change[];
    const corrected = await technician.record('trace-b', 5, corrections);
    expect(corrected.errors).toBeUndefined();

    let now = await check(set, daysAgo(800), { goodUntil: daysAgo(430) });
    now = await check(now, daysAgo(400), { goodUntil: daysAgo(35) });
    now = await check(now, daysAgo(30), { asFound: 'OUT_OF_TOLERANCE', goodUntil: daysAgo(-335) });
    const id = checkOn(now, daysAgo(30));
    const { reverseTrace: found } = await technician.data(trace, { id });
    expect(found).toMatchObject({ from: daysAgo(400), to: daysAgo(30), totalCount: 9, testSet: { serial } });
    const told = found.edges.map(({ node }: Data) => [node.aircraft.registration, node.done, node.number]);
    expect(told).toEqual([
      ['TW-TRB', daysAgo(30), 4],
      ['TW-TRB', daysAgo(81), 7],
      ['TW-TRA', daysAgo(100), 10],
      ['TW-TRA', daysAgo(110), 9],
      ['TW-TRA', daysAgo(120), 8],
      ['TW-TRA', daysAgo(130), 7],
      ['TW-TRA', daysAgo(140), 6],
      ['TW-TRA', daysAgo(200), 4],
      ['TW-TRA', daysAgo(400), 3],
    ]);
    expect(found.edges[0].node).toMatchObject({ kind: 'TRANSPONDER_TEST', signer: radioStation.name });

    const paged: unknown[] = [];
    for (let after: string | null = null; ;) {
      const { reverseTrace: page }: Data = await technician.data(trace, { id, first: 2, after });
      paged.push(...page.edges.map(({ node }: Data) => [node.aircraft.registration, node.done, node.number]));
      if (!page.pageInfo.hasNextPage) break;
      after = page.pageInfo.endCursor;
    }
    expect(paged).toEqual(told);
  });

  it('goes on to the newest entry while the set is not put right, and is not offered for work', async () => {
    const set = await newSet();
    await technician.record('trace-c', 0, [
      add('TW-TRC'),
      tested('t1', daysAgo(5), set.serial),
      tested('t2', daysAgo(1), set.serial),
    ]);
    const open = await check(set, daysAgo(10), { asFound: 'OUT_OF_TOLERANCE' });
    expect(open.calibratedUntil).toBeNull();
    const { reverseTrace: found } = await technician.data(trace, { id: checkOn(open, daysAgo(10)) });
    expect(found).toMatchObject({ from: null, to: null, totalCount: 2 });
    const offered = (await technician.data(choices)).workChoices.testSets.map((each: Data) => each.serial);
    expect(offered).not.toContain(set.serial);
    await check(open, daysAgo(2), { goodUntil: daysAgo(-360) });
    expect((await technician.data(choices)).workChoices.testSets).toContainEqual({
      serial: set.serial,
      name: 'Pitot-static test set',
      calibratedUntil: daysAgo(-360),
    });
    const closed = await technician.data(trace, { id: checkOn(open, daysAgo(10)) });
    expect(closed.reverseTrace).toMatchObject({ to: daysAgo(2), totalCount: 1 });
  });

  it('is told to nobody of another house', async () => {
    const set = await check(await newSet(), daysAgo(3), { asFound: 'OUT_OF_TOLERANCE' });
    const stranger = await as('manager@two.example');
    expect(await stranger.problem(trace, { id: set.calibrations[0].id })).toMatchObject({ code: 'NOT_FOUND' });
    expect((await stranger.data('{ testSets { id } }')).testSets).not.toContainEqual({ id: set.id });
    // A set with the same serial in another house finds none of our entries.
    const { addTestSet: twin } = await stranger.data(addSet, { serial: 'TS-1', name: 'Twin' });
    const input = { testSetId: twin.id, expectedRevision: 1, checkedOn: daysAgo(1), asFound: 'OUT_OF_TOLERANCE' };
    const { addCalibration: twinChecked } = await stranger.data(addCheck, { input });
    const { reverseTrace: none } = await stranger.data(trace, { id: twinChecked.calibrations[0].id });
    expect(none.totalCount).toBe(0);
  });
});

describe('agencies', () => {
  const input = {
    kind: 'REPAIR_STATION',
    name: 'Outside Avionics',
    certificate: 'TW-RS-9',
    ratings: ['RADIO_1', 'INSTRUMENT_1'],
    heldFrom: daysAgo(100),
    heldUntil: daysAgo(0),
  };
  it('are offered on the days on which they hold their ratings, beside members with a certificate', async () => {
    const { addAgency: made } = await manager.data(addAgency, { input });
    expect(made).toMatchObject({ ...input, ratings: ['INSTRUMENT_1', 'RADIO_1'], inUse: true, revision: 1 });
    const offer = {
      kind: input.kind,
      name: input.name,
      certificate: input.certificate,
      ratings: ['INSTRUMENT_1', 'RADIO_1'],
    };
    expect((await technician.data(choices)).workChoices.agencies).toContainEqual(offer);
    const person = {
      email: 'choice@one.example',
      name: 'Choice Signer',
      password: 'lantern-and-rivet',
      role: 'TECHNICIAN',
      certificate: { kind: 'MECHANIC', number: 'M-7', ratings: null },
    };
    await manager.data('mutation ($input: NewPersonInput!) { addPerson(input: $input) { id } }', { input: person });
    expect((await technician.data(choices)).workChoices.agencies).toContainEqual({
      kind: 'MECHANIC',
      name: 'Choice Signer',
      certificate: 'M-7',
      ratings: null,
    });
    const change = { agencyId: made.id, expectedRevision: 1, ...input, heldUntil: daysAgo(1), inUse: true };
    expect((await manager.data(amendAgency, { input: change })).amendAgency).toMatchObject({ revision: 2 });
    expect((await technician.data(choices)).workChoices.agencies).not.toContainEqual(offer);
    expect((await manager.data(lastEntry)).houseEntries.edges[0].node).toEqual({
      kind: 'agency.amend',
      subject: { name: 'Outside Avionics' },
      after: { heldUntil: daysAgo(1) },
    });
    expect(await manager.problem(amendAgency, { input: change })).toMatchObject({ code: 'STALE_REVISION' });
  });

  it('refuse days in the wrong order', async () => {
    const wrong = { ...input, heldFrom: daysAgo(1), heldUntil: daysAgo(2) };
    expect(await manager.problem(addAgency, { input: wrong })).toMatchObject({ field: 'input.heldUntil' });
  });
});

describe('roles', () => {
  const seen = { testSetId: 'x', expectedRevision: 1 };
  const agency = { kind: 'PILOT', name: 'X' };
  it.each([
    ['addTestSet', addSet, { serial: 'X', name: 'X' }],
    ['amendTestSet', amendSet, { input: { ...seen, serial: 'X', name: 'X', inUse: true } }],
    ['addCalibration', addCheck, { input: { ...seen, checkedOn: daysAgo(1), goodUntil: daysAgo(-1) } }],
    ['strikeCalibration', strike, { input: { ...seen, calibrationId: 'x', reason: 'x' } }],
    ['addAgency', addAgency, { input: agency }],
    ['amendAgency', amendAgency, { input: { ...agency, agencyId: 'x', expectedRevision: 1, inUse: true } }],
  ])('%s is for managers', async (_, query, variables) => {
    for (const email of ['technician@one.example', 'dispatcher@one.example', 'auditor@one.example'])
      expect(await (await as(email)).problem(query, variables), email).toMatchObject({ code: 'FORBIDDEN' });
  });

  it.each(['{ testSets { id } }', '{ agencies { id } }', choices])('%s is closed to dispatchers', async (query) => {
    expect(await (await as('auditor@one.example')).problem(query)).toEqual({ code: 'none' });
    expect(await (await as('dispatcher@one.example')).problem(query)).toMatchObject({ code: 'FORBIDDEN' });
  });
});
