import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Change } from '../../libs/rules/src/index.js';
import { mechanic, pilot, recordOf } from '../../libs/rules/testing/builders.js';
import { add, daysAgo, flyable } from './cast.js';
import type { Client, Data } from './client.js';
import { changeInput, inputOf } from './inputs.js';
import { as } from './people.js';

let manager: Client;
let technician: Client;
let dispatcher: Client;
beforeAll(async () => {
  manager = await as('manager@one.example');
  technician = await as('technician@one.example');
  dispatcher = await as('dispatcher@one.example');
});

const key = () => `act-${randomUUID()}`;
const today = daysAgo(0);
const placeHold = `mutation ($input: PlaceHoldInput!) { placeHold(input: $input) { revision holds { id } } }`;
const liftHold = `mutation ($input: LiftHoldInput!) { liftHold(input: $input) { revision } }`;
const startJob = `mutation ($input: StartJobInput!) { startJob(input: $input) { state holdId startedBy openAtStart } }`;
const beginWork = `mutation ($input: BeginWorkInput!) { beginWork(input: $input) { id title state holdId } }`;
const stopJob = `mutation ($input: StopJobInput!) { stopJob(input: $input) { state endedBecause } }`;
const releaseJob = `mutation ($input: ReleaseJobInput!) { releaseJob(input: $input) { state } }`;

let count = 0;
/** An aircraft that flies under VFR by day, so that what a hold costs is seen. */
async function flying(more: readonly Change[] = []): Promise<string> {
  count += 1;
  const id = `held-${count}`;
  const answer = await technician.record(id, 0, [add(`TW-H${count}Q`, { seats: 1 }), ...flyable(), ...more]);
  expect(answer.errors).toBeUndefined();
  return id;
}

const stateOf = async (id: string, who = manager): Promise<Data> =>
  (
    await who.data(`{ aircraft(id: "${id}") { revision
      verdicts { profile { id } ready standing because { key text } }
      holds { id reason by open until job { id title } lifted { reason by } }
      history { edges { node { kind by body } } } } }`)
  ).aircraft as Data;
const vfr = (state: Data): Data => state.verdicts.find((each: Data) => each.profile.id === 'vfr-cross-country') as Data;

async function planned(aircraftId: string, title: string): Promise<string> {
  const data = await technician.data('mutation ($input: CreateJobInput!) { createJob(input: $input) { id } }', {
    input: { aircraftId, title },
  });
  return data.createJob.id as string;
}
const start = async (jobId: string, who = technician): Promise<Data> =>
  (await who.data(startJob, { input: { jobId, key: key() } })).startJob as Data;
const jobState = async (jobId: string): Promise<string> =>
  (await technician.data(`{ job(id: "${jobId}") { state } }`)).job.state as string;

const entryOf = (part: Partial<Parameters<typeof recordOf>[0]> = {}) =>
  recordOf({
    kind: 'release-entry',
    id: `release-${randomUUID().slice(0, 8)}`,
    on: today,
    done: { date: today, at: `${today}T00:03Z` },
    agency: mechanic,
    outcome: 'approved',
    note: 'Second transceiver fitted by the data of the plan',
    ...part,
  });
const openOf = async (jobId: string): Promise<readonly Data[]> =>
  (await technician.data(`{ job(id: "${jobId}") { openAtRelease { key text outcome stops } } }`)).job
    .openAtRelease as readonly Data[];
/** A release by somebody who has looked at all that stays open. */
async function release(jobId: string, entry: ReturnType<typeof recordOf>) {
  return await releaseSeeing(
    jobId,
    entry,
    (await openOf(jobId)).map(({ key: each }) => each as string),
  );
}
const releaseSeeing = (jobId: string, entry: ReturnType<typeof recordOf>, seen: readonly string[]) =>
  technician.ask(releaseJob, { input: { jobId, key: key(), entry: inputOf(entry, 'RecordHeadInput'), seen } });

const behindPanel: Change = {
  kind: 'work.done',
  version: 1,
  what: 'Looms behind the panel moved',
  unitId: null,
  touched: ['behind-panel'],
  performed: { date: today, at: `${today}T00:01Z` },
};
const controls = (secondPerson: string | null): Change => ({
  kind: 'record.add',
  version: 1,
  record: recordOf({
    kind: 'controls-check',
    id: `controls-${secondPerson === null ? 'one' : 'two'}`,
    on: today,
    done: { date: today, at: `${today}T00:02Z` },
    agency: mechanic,
    secondPerson,
  }),
});
async function record(aircraftId: string, jobId: string, ...changes: readonly Change[]): Promise<void> {
  const { revision } = await stateOf(aircraftId);
  const sent = { aircraftId, expectedRevision: revision, key: key(), jobId, changes: changes.map(changeInput) };
  expect((await technician.send(sent)).errors).toBeUndefined();
}

describe('a hold', () => {
  it('costs every flight with its reason before others, and lifting it gives them back; both stay in the record', async () => {
    const id = await flying();
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'YES', standing: 'JUDGED' });
    const placed = await dispatcher.data(placeHold, { input: { aircraftId: id, key: key(), reason: ' Fuel smell ' } });
    const [{ id: holdId }] = placed.placeHold.holds;
    const held = await stateOf(id);
    for (const verdict of held.verdicts) {
      expect(verdict).toMatchObject({ ready: 'NO', standing: 'HELD' });
      expect(verdict.because[0].text).toBe('The aircraft is held: Fuel smell (Dispatcher One).');
    }
    expect(held.holds).toEqual([
      { id: holdId, reason: 'Fuel smell', by: 'Dispatcher One', open: true, until: null, job: null, lifted: null },
    ]);

    const lift = { aircraftId: id, key: key(), holdId, reason: 'Drain was wet from washing' };
    await technician.data(liftHold, { input: lift });
    const after = await stateOf(id);
    expect(vfr(after)).toMatchObject({ ready: 'YES', standing: 'JUDGED' });
    expect(after.holds[0]).toMatchObject({
      open: false,
      lifted: { reason: 'Drain was wet from washing', by: 'Technician One' },
    });
    const kinds = after.history.edges.slice(0, 2).map(({ node }: Data) => [node.kind, node.by]);
    expect(kinds).toEqual([
      ['hold.lift', 'Technician One'],
      ['hold.place', 'Dispatcher One'],
    ]);
    // As any other work, both say what they did to the answers.
    const told = `{ aircraft(id: "${id}") { history(first: 2) { edges { node { effect { flights { was is } opened { text } closed { text } } } } } } }`;
    const [lifted, put] = (await technician.data(told)).aircraft.history.edges.map(({ node }: Data) => node.effect);
    expect(put.flights).toContainEqual({ was: 'YES', is: 'NO' });
    expect(put.opened).toContainEqual({ text: 'The aircraft is held: Fuel smell (Dispatcher One).' });
    expect(lifted.flights).toContainEqual({ was: 'NO', is: 'YES' });
    expect(lifted.closed).toContainEqual({ text: 'The aircraft is held: Fuel smell (Dispatcher One).' });
    // A dispatcher reads why, and not which of the staff.
    expect(
      (await dispatcher.data(`{ aircraft(id: "${id}") { holds { lifted { reason by } } } }`)).aircraft.holds,
    ).toEqual([{ lifted: { reason: 'Drain was wet from washing', by: null } }]);
  });

  it('waits for no draft: it is placed on the record as it stands, once for each key', async () => {
    const id = await flying();
    const input = { aircraftId: id, key: key(), reason: 'Tyre' };
    const { revision } = await stateOf(id);
    await Promise.all([1, 2, 3].map(() => dispatcher.data(placeHold, { input })));
    expect((await stateOf(id)).revision).toBe(revision + 1);
    expect(await dispatcher.problem(placeHold, { input: { ...input, reason: 'Another' } })).toMatchObject({
      code: 'KEY_REUSED',
    });
  });

  it('wants a reason, an aircraft of this person and a role', async () => {
    const id = await flying();
    const input = { aircraftId: id, key: key(), reason: '  ' };
    expect(await manager.problem(placeHold, { input })).toMatchObject({ code: 'BAD_INPUT', field: 'input.reason' });
    const north = await as('north@one.example');
    const auditor = await as('auditor@one.example');
    const stranger = await as('manager@two.example');
    const good = { ...input, reason: 'Tyre' };
    for (const [who, code] of [
      [north, 'NOT_FOUND'],
      [stranger, 'NOT_FOUND'],
      [auditor, 'FORBIDDEN'],
      [await as(null), 'SIGNED_OUT'],
    ] as const) {
      expect(await who.problem(placeHold, { input: good })).toMatchObject({ code });
    }
    expect((await stateOf(id)).holds).toEqual([]);
    const lift = { aircraftId: id, key: key(), holdId: 'none', reason: 'x' };
    expect(await dispatcher.problem(liftHold, { input: lift })).toMatchObject({ code: 'FORBIDDEN' });
    expect(await technician.problem(liftHold, { input: lift })).toMatchObject({
      code: 'NOT_FOUND',
      field: 'input.holdId',
    });
  });
});

describe('a job in work', () => {
  it('holds the aircraft, and its release lets it go in the same piece of work', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Second transceiver');
    expect(await start(jobId)).toMatchObject({ state: 'IN_WORK', startedBy: 'Technician One' });
    const held = await stateOf(id);
    expect(vfr(held)).toMatchObject({ ready: 'NO', standing: 'IN_WORK' });
    expect(vfr(held).because[0].text).toBe('The aircraft is in work: Second transceiver (Technician One).');
    expect(held.holds[0]).toMatchObject({ open: true, job: { id: jobId, title: 'Second transceiver' } });

    const { revision } = held;
    const entry = entryOf();
    expect((await release(jobId, entry)).errors).toBeUndefined();
    const after = await stateOf(id);
    expect(after.revision).toBe(revision + 2);
    expect(vfr(after)).toMatchObject({ ready: 'YES', standing: 'JUDGED' });
    expect(after.holds[0]).toMatchObject({ open: false, lifted: { by: 'Technician One' } });
    expect(await jobState(jobId)).toBe('RELEASED');
    expect(after.history.edges.slice(0, 2).map(({ node }: Data) => node.kind as string)).toEqual([
      'hold.lift',
      'record.add',
    ]);
  });

  it('begins by a title alone, once for each key; nothing is left behind where it is refused', async () => {
    const id = await flying();
    const input = { aircraftId: id, key: key(), title: ' Annual, right wing ' };
    const begun = await Promise.all([1, 2, 3].map(() => technician.data(beginWork, { input })));
    const jobs = begun.map(({ beginWork: job }) => job as Data);
    expect(new Set(jobs.map((job) => job.id as string)).size).toBe(1);
    expect(jobs[0]).toMatchObject({ title: 'Annual, right wing', state: 'IN_WORK', holdId: `job:${jobs[0]?.id}` });
    const held = await stateOf(id);
    expect(held.holds.filter(({ open }: Data) => open)).toHaveLength(1);
    expect(vfr(held).because[0].text).toBe('The aircraft is in work: Annual, right wing (Technician One).');
    expect((await release(jobs[0]?.id as string, entryOf())).errors).toBeUndefined();
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'YES', standing: 'JUDGED' });

    const { revision } = await stateOf(id);
    const again = { ...input, key: key() };
    for (const [who, wrong, code, field] of [
      [technician, { ...again, title: ' ' }, 'BAD_INPUT', 'input.title'],
      [technician, { ...again, title: 'x'.repeat(201) }, 'BAD_INPUT', 'input.title'],
      [technician, { ...again, aircraftId: 'none' }, 'NOT_FOUND', 'input.aircraftId'],
      [await as('manager@two.example'), again, 'NOT_FOUND', 'input.aircraftId'],
      [dispatcher, again, 'FORBIDDEN', undefined],
      [technician, { ...input, title: 'Another' }, 'KEY_REUSED', undefined],
    ] as const) {
      const problem = await who.problem(beginWork, { input: wrong });
      expect(problem).toMatchObject({ code, ...(field === undefined ? {} : { field }) });
    }
    expect((await stateOf(id)).revision).toBe(revision);
    expect((await technician.data(`{ jobs(aircraftId: "${id}") { id } }`)).jobs).toEqual([]);
  });

  it('is not released while something is open that the work called for; nothing is recorded then', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Looms');
    await start(jobId);
    await record(id, jobId, behindPanel);
    expect(await jobState(jobId)).toBe('IN_WORK');
    const { revision } = await stateOf(id);

    const refused = await release(jobId, entryOf());
    expect(refused.errors?.[0]?.extensions).toMatchObject({ code: 'REFUSED' });
    expect(JSON.stringify(refused.errors?.[0]?.extensions['refusals'])).toContain('no check of supports and controls');
    expect((await stateOf(id)).revision).toBe(revision);

    await record(id, jobId, controls(null));
    const unsigned = await release(jobId, entryOf());
    expect(JSON.stringify(unsigned.errors?.[0]?.extensions['refusals'])).toContain('by two people cannot be told');

    await record(id, jobId, controls('S. Quince'));
    expect((await release(jobId, entryOf())).errors).toBeUndefined();
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'YES', standing: 'JUDGED' });
  });

  it('is released only by who may, with an entry that was seen and holds what it must', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Transponder');
    await start(jobId);
    await record(id, jobId, { ...behindPanel, touched: ['ferrous'] } as Change);
    const wrong = async (part: Parameters<typeof entryOf>[0]) =>
      (await release(jobId, entryOf(part))).errors?.[0]?.extensions;
    expect(await wrong({ kind: 'bonding-check' })).toMatchObject({ code: 'BAD_INPUT', field: 'input.entry.kind' });
    expect(await wrong({ evidence: 'reported' })).toMatchObject({ field: 'input.entry.evidence' });
    expect(await wrong({ agency: null })).toMatchObject({ field: 'input.entry.agency' });
    const before = { done: { date: daysAgo(3), at: null } };
    expect(await wrong(before)).toMatchObject({ field: 'input.entry.done.date' });
    const uncertified = { ...mechanic, ratings: ['powerplant'] as const };
    expect(JSON.stringify(await wrong({ agency: { ...uncertified, ratings: [...uncertified.ratings] } }))).toContain(
      'is not a person or agency that may sign it',
    );
    expect(JSON.stringify(await wrong({ agency: pilot }))).toContain('cannot be told');
    expect(JSON.stringify(await wrong({ note: null }))).toContain('not known to hold');
    expect(await jobState(jobId)).toBe('IN_WORK');
    expect(vfr(await stateOf(id))).toMatchObject({ standing: 'IN_WORK' });
  });

  it('asks that what stays open was looked at', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Static line');
    await start(jobId);
    await record(id, jobId, { ...behindPanel, touched: ['static-system'] } as Change);
    const leak = 'tests-after-change|static-leak-test:aircraft';
    const open = await openOf(jobId);
    expect(open.find(({ key: each }) => each === leak)).toMatchObject({ stops: false, outcome: 'NOT_MET' });
    const others = open.flatMap(({ key: each }) => (each === leak ? [] : [each as string]));
    const refused = await releaseSeeing(jobId, entryOf(), others);
    const refusals = refused.errors?.[0]?.extensions['refusals'] as readonly Data[];
    expect(refusals).toMatchObject([{ code: 'not-looked-at', field: 'input.seen' }]);
    expect(refusals[0]?.message).toContain('Static leak test');
    expect((await releaseSeeing(jobId, entryOf(), [...others, leak])).errors).toBeUndefined();
  });

  it('stopped without a release stays held; it can go on under the same hold', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Indicator');
    const { holdId } = await start(jobId);
    const stopped = await technician.data(stopJob, { input: { jobId, reason: 'Part is the wrong one' } });
    expect(stopped.stopJob).toEqual({ state: 'STOPPED', endedBecause: 'Part is the wrong one' });
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'NO', standing: 'IN_WORK' });
    expect((await release(jobId, entryOf())).errors?.[0]?.extensions).toMatchObject({ field: 'input.jobId' });
    const { revision } = await stateOf(id);
    expect(await start(jobId)).toMatchObject({ state: 'IN_WORK', holdId });
    expect((await stateOf(id)).revision).toBe(revision);
    expect((await release(jobId, entryOf())).errors).toBeUndefined();
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'YES' });
  });

  it('of two, each has its own hold', async () => {
    const id = await flying();
    const first = await planned(id, 'Transceiver');
    const second = await planned(id, 'Transponder');
    await start(first);
    await record(id, first, behindPanel);
    await start(second);
    expect((await stateOf(id)).holds.filter(({ open }: Data) => open)).toHaveLength(2);
    // What the first job left open before the second began is the first one's to close.
    expect((await release(second, entryOf())).errors).toBeUndefined();
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'NO', standing: 'IN_WORK' });
    expect((await release(first, entryOf())).errors?.[0]?.extensions).toMatchObject({ code: 'REFUSED' });
    await record(id, first, controls('S. Quince'));
    expect((await release(first, entryOf())).errors).toBeUndefined();
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'YES' });
  });

  it('started or released twice at once happens once', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Antenna');
    const starts = await Promise.all([1, 2, 3].map(() => technician.ask(startJob, { input: { jobId, key: key() } })));
    expect(starts.filter(({ errors }) => errors === undefined)).toHaveLength(1);
    const releases = await Promise.all([1, 2, 3].map(() => release(jobId, entryOf())));
    expect(releases.filter(({ errors }) => errors === undefined)).toHaveLength(1);
    const state = await stateOf(id);
    expect(state.holds).toHaveLength(1);
    expect(state.history.edges.filter(({ node }: Data) => node.kind === 'record.add')).toHaveLength(2);
  });

  it('its hold is lifted by hand only with a reason and by a manager, and the job is then stopped', async () => {
    const id = await flying();
    const jobId = await planned(id, 'Indicator');
    const { holdId } = await start(jobId);
    const input = { aircraftId: id, key: key(), holdId, reason: 'Ferry to the paint shop, panel closed' };
    expect(await technician.problem(liftHold, { input })).toMatchObject({ code: 'FORBIDDEN' });
    const lift = { kind: 'hold.lift', version: 1, holdId, at: `${today}T00:00Z`, reason: 'by the back door' };
    const { revision } = await stateOf(id);
    expect((await technician.record(id, revision, [lift])).errors?.[0]?.extensions).toMatchObject({
      code: 'FORBIDDEN',
    });
    expect(await manager.problem(liftHold, { input: { ...input, reason: '' } })).toMatchObject({
      field: 'input.reason',
    });
    await manager.data(liftHold, { input });
    expect(vfr(await stateOf(id))).toMatchObject({ ready: 'YES' });
    expect(await jobState(jobId)).toBe('STOPPED');
    // Taken up again it holds the aircraft anew.
    expect((await start(jobId)).holdId).toBe(`job:${jobId}:2`);
    expect(vfr(await stateOf(id))).toMatchObject({ standing: 'IN_WORK' });
    // The same by the general way of recording.
    const again = await stateOf(id);
    const byHand = { ...lift, holdId: `job:${jobId}:2`, at: `${daysAgo(-1)}T00:00Z` };
    expect((await manager.record(id, again.revision, [byHand])).errors).toBeUndefined();
    expect(await jobState(jobId)).toBe('STOPPED');
  });

  it('nobody places the hold of a job by another way', async () => {
    const id = await flying();
    const { revision } = await stateOf(id);
    const place = {
      kind: 'hold.place',
      version: 1,
      hold: { id: 'job:made-up', reason: 'x', by: 'x', from: `${today}T00:00Z`, until: null },
    };
    expect((await technician.record(id, revision, [place])).errors?.[0]?.extensions).toMatchObject({
      code: 'REFUSED',
      field: 'input.changes.0.hold.id',
    });
  });
});
