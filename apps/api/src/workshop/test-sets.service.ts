import { randomUUID } from 'node:crypto';
import type { Clock } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { AppError, badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { summaryOf } from '../fleet/summaries.js';
import { checkedText } from '../house/checks.js';
import { changeHouse, difference, expectRevision } from '../house/house-entry.data.js';
import type { Done, HouseEntry, Subject } from '../house/house-entry.data.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { TestSetsData } from './test-sets.data.js';
import type { Calibration, TestSet } from './test-sets.data.js';
import { countTraced, tracedEntries } from './trace.data.js';
import type { TracedRow } from './trace.data.js';
import { suspectSpan } from './trace.js';

interface Seen {
  readonly testSetId: string;
  readonly expectedRevision: number;
}

/** The house's test sets, their calibration, and the entries that lean on one found out of tolerance. */
export class TestSetsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor | null): Promise<TestSet[]> {
    authorise(actor, 'workshop.read');
    return await this.database.withOrganisation(actor, (connection) =>
      new TestSetsData(connection, actor.organisationId).all(),
    );
  }

  async trace(
    actor: Actor | null,
    ask: { readonly calibrationId: string; readonly first?: number | null; readonly after?: string | null },
  ) {
    authorise(actor, 'workshop.read');
    const page = readPage(ask.first, ask.after, ['text', 'text', 'number']);
    return await this.database.withOrganisation(actor, async (connection) => {
      const all = await new TestSetsData(connection, actor.organisationId).all();
      const testSet = all.find(({ calibrations }) => calibrations.some(({ id }) => id === ask.calibrationId));
      const calibration = testSet?.calibrations.find(({ id }) => id === ask.calibrationId);
      if (testSet === undefined || calibration === undefined)
        throw new AppError({ code: 'NOT_FOUND', what: 'calibration', field: 'calibrationId' });
      const span = suspectSpan(testSet.calibrations, calibration);
      const rows = await tracedEntries(connection, actor, testSet.serial, span, page);
      const total = await countTraced(connection, actor, testSet.serial, span);
      return { testSet, calibration, ...span, ...connectionOf(page, rows, total, tracedKey, tracedNode) };
    });
  }

  async add(actor: Actor | null, input: { readonly serial: string; readonly name: string }): Promise<TestSet> {
    authorise(actor, 'workshop.write');
    const id = randomUUID();
    return await this.change(actor, async (data) => {
      const serial = await freeSerial(data, input.serial, 'serial', null);
      const name = checkedText(input.name, 'name', 'what the test set is');
      await data.add({ id, serial, name });
      return { subject: subjectOf({ id, name, serial }), kind: 'test-set.add', before: null, after: { serial, name } };
    });
  }

  async amend(
    actor: Actor | null,
    input: Seen & { readonly serial: string; readonly name: string; readonly inUse: boolean },
  ): Promise<TestSet> {
    authorise(actor, 'workshop.write');
    return await this.changeSeen(actor, input, async (data, before) => {
      const serial = await freeSerial(data, input.serial, 'input.serial', before.id);
      const after = {
        serial,
        name: checkedText(input.name, 'input.name', 'what the test set is'),
        inUse: input.inUse,
      };
      const changed = difference({ serial: before.serial, name: before.name, inUse: before.inUse }, after);
      if (changed === null) return null;
      await data.amend({ id: before.id, ...after });
      return { kind: 'test-set.amend', ...changed };
    });
  }

  async addCalibration(
    actor: Actor | null,
    input: Seen & {
      readonly checkedOn: string;
      readonly asFound?: Calibration['asFound'];
      readonly goodUntil?: string | null;
      readonly certificate?: string | null;
    },
  ): Promise<TestSet> {
    authorise(actor, 'workshop.write');
    const { checkedOn, asFound = null, goodUntil = null } = input;
    if (checkedOn > latestToday(this.clock.now()))
      throw badInput('input.checkedOn', 'That day has not come yet.', 'Write the day on the certificate.');
    if (goodUntil !== null && goodUntil < checkedOn)
      throw badInput('input.goodUntil', 'It ends before the day of the check.', 'Compare both with the certificate.');
    if (goodUntil === null && asFound !== 'out-of-tolerance')
      throw badInput(
        'input.goodUntil',
        'A calibration is good until some day.',
        'Write its last good day, or say that the set was found out of tolerance.',
      );
    const certificate = input.certificate?.trim() || null;
    if (certificate !== null) checkedText(certificate, 'input.certificate', 'the number of the certificate');
    const check = { id: randomUUID(), checkedOn, asFound, goodUntil, certificate };
    return await this.changeSeen(actor, input, async (data, before) => {
      await data.addCalibration(before.id, check);
      return { kind: 'test-set.calibration', before: null, after: { checkedOn, asFound, goodUntil, certificate } };
    });
  }

  async strikeCalibration(
    actor: Actor | null,
    input: Seen & { readonly calibrationId: string; readonly reason: string },
  ): Promise<TestSet> {
    authorise(actor, 'workshop.write');
    return await this.changeSeen(actor, input, async (data, before) => {
      const check = before.calibrations.find(({ id }) => id === input.calibrationId);
      if (check === undefined)
        throw new AppError({ code: 'NOT_FOUND', what: 'calibration', field: 'input.calibrationId' });
      if (check.struck !== null)
        throw badInput('input.calibrationId', 'It is struck out already.', 'Enter the right one.');
      const reason = checkedText(input.reason, 'input.reason', 'what is wrong with it');
      await data.strikeCalibration(before.id, check.id, reason);
      const { checkedOn, goodUntil } = check;
      return { kind: 'test-set.strike', before: null, after: { checkedOn, goodUntil, reason } };
    });
  }

  private async changeSeen(
    actor: Actor,
    input: Seen,
    work: (data: TestSetsData, before: TestSet) => Promise<Omit<HouseEntry, 'subject'> | null>,
  ): Promise<TestSet> {
    return await this.change(actor, async (data, expect) => {
      const before = one(await data.all(), input.testSetId);
      const subject = subjectOf(before);
      await expect(subject, before.revision, input.expectedRevision);
      const entry = await work(data, before);
      return entry === null ? { subject } : { subject, ...entry };
    });
  }

  /** The work gives the subject, and the rest of its entry where something changed. */
  private async change(
    actor: Actor,
    work: (
      data: TestSetsData,
      expect: (subject: Subject, is: number, expected: number) => Promise<void>,
    ) => Promise<HouseEntry | { readonly subject: Subject }>,
  ): Promise<TestSet> {
    return await changeHouse(this.database, this.clock, actor, async (connection): Promise<Done<TestSet>> => {
      const data = new TestSetsData(connection, actor.organisationId);
      const done = await work(data, (subject, is, expected) =>
        expectRevision(connection, actor, subject, is, expected),
      );
      return { answer: one(await data.all(), done.subject.id), entry: 'kind' in done ? done : null };
    });
  }
}

function one(all: readonly TestSet[], id: string): TestSet {
  const found = all.find((each) => each.id === id);
  if (found === undefined) throw new AppError({ code: 'NOT_FOUND', what: 'test set', field: 'input.testSetId' });
  return found;
}

async function freeSerial(data: TestSetsData, given: string, field: string, but: string | null): Promise<string> {
  const serial = checkedText(given, field, 'the serial number, as entries name it');
  const taken = (await data.all()).some(
    (each) => each.id !== but && each.serial.toLowerCase() === serial.toLowerCase(),
  );
  if (taken) throw badInput(field, `There is a test set ${serial} already.`, 'Change that one, or check the number.');
  return serial;
}

function subjectOf({ id, name, serial }: Pick<TestSet, 'id' | 'name' | 'serial'>): Subject {
  return { kind: 'test-set', id, name: `${name}, serial ${serial}` };
}

/** The latest day that it is anywhere on earth: a certificate may come from farther east. */
function latestToday(now: Date): string {
  return new Date(now.getTime() + 14 * 3_600_000).toISOString().slice(0, 10);
}

function tracedKey(row: TracedRow): readonly string[] {
  return [row.done, row.registration, String(row.number)];
}

function tracedNode(row: TracedRow) {
  const { number, kind, done, outcome, signer } = row;
  return { aircraft: summaryOf(row), number, kind, done, outcome, signer };
}
