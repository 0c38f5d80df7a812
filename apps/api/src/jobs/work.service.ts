import { randomUUID } from 'node:crypto';
import { apply, civilDateAt, holdOfJob, jobOfHold, messageOf, openAtRelease } from '@tallywing/rules';
import type { ChangeOf, Dossier, MessageWords, OpenAtRelease } from '@tallywing/rules';
import { AircraftData, dossierOf, typeIdsOf } from '../aircraft/aircraft.data.js';
import { readChangeInput } from '../aircraft/change-inputs.js';
import { checkedReason } from '../aircraft/holds.service.js';
import type { Act, RecordService } from '../aircraft/record.service.js';
import { readChanges } from '../aircraft/recorder.js';
import { wordsIn } from '../aircraft/words.js';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Refusal } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { createJob, endWork, jobById, putInWork } from './jobs.data.js';
import type { JobRow } from './jobs.data.js';
import { checkedTitle, nodeOf, notOpen } from './jobs.service.js';

type Entry = ChangeOf<'record.add'>['record'];

interface Release {
  readonly jobId: string;
  readonly key: string;
  readonly entry: Readonly<Record<string, unknown>>;
  readonly seen: readonly string[];
}

/** A planned job on its way: in work it holds the aircraft, its release lets it go, stopped it leaves it held. */
export class WorkService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordService,
  ) {}

  async start(actor: Actor | null, { jobId, key }: { readonly jobId: string; readonly key: string }) {
    authorise(actor, 'jobs.use');
    const job = await this.find(actor, jobId);
    await this.records.act(actor, 'jobs.use', {
      aircraftId: job.aircraft_id,
      key,
      content: { start: jobId },
      ...putting(actor, jobId, job.title),
    });
    return nodeOf(await this.find(actor, jobId));
  }

  /** Work that nobody planned: the job is made and put in work in one go. Sent again it is the same job. */
  async begin(
    actor: Actor | null,
    { aircraftId, key, ...input }: { readonly aircraftId: string; readonly title: string; readonly key: string },
  ) {
    authorise(actor, 'jobs.use');
    const title = checkedTitle(input.title);
    const id = randomUUID();
    const { changes, after } = putting(actor, id, title);
    const { jobId = id } = await this.records.act(actor, 'jobs.use', {
      aircraftId,
      key,
      content: { begin: title },
      told: { jobId: id },
      changes: async (situation) => {
        // The aircraft was found and locked for this person.
        await createJob(situation.connection, actor, { id, aircraftId, title, at: situation.now });
        return await changes(situation);
      },
      after,
    });
    return nodeOf(await this.find(actor, jobId));
  }

  async stop(actor: Actor | null, input: { readonly jobId: string; readonly reason: string }) {
    authorise(actor, 'jobs.use');
    const because = checkedReason(input.reason, 'input.reason');
    const { jobId: id } = input;
    await this.find(actor, id);
    await this.database.withOrganisation(actor, async (connection) => {
      const at = this.clock.now();
      if (!(await endWork(connection, actor, { id, state: 'stopped', because, at }))) throw notInWork();
    });
    return nodeOf(await this.find(actor, id));
  }

  /** @throws AppError REFUSED naming all that is open and stops the release, or that was not looked at */
  async release(actor: Actor | null, { jobId, key, entry: sent, seen }: Release) {
    authorise(actor, 'jobs.use');
    const job = await this.find(actor, jobId);
    const entry = readEntry(sent);
    await this.records.act(actor, 'jobs.use', {
      aircraftId: job.aircraft_id,
      key,
      content: { release: jobId, entry, seen },
      jobId,
      changes: async ({ before, data, now, connection }) => {
        const current = await jobById(connection, actor, jobId);
        if (current?.state !== 'in-work' || current.hold_id === null) throw notInWork();
        const dossier = dossierOf(before);
        checkDay(entry, current, dossier);
        const added = { kind: 'record.add', version: 1, record: entry } as const;
        const catalogue = await data.catalogueFor(typeIdsOf(dossier));
        const open = openAtRelease(apply(dossier, added), catalogue, instantOf(now), entry.id);
        refuseOpen(open, new Set(current.open_at_start), new Set(seen), entry.id, wordsIn(dossier));
        const reason = `Released by ${entry.agency?.name ?? 'the entry'}: ${job.title}`;
        return [added, { kind: 'hold.lift', version: 1, holdId: current.hold_id, at: instantOf(now), reason }];
      },
      after: async (connection, at) => {
        const done = { id: jobId, state: 'released' as const, because: `entry ${entry.id}`, at };
        if (!(await endWork(connection, actor, done))) throw notInWork();
      },
    });
    return nodeOf(await this.find(actor, jobId));
  }

  async open(actor: Actor | null, jobId: string) {
    authorise(actor, 'jobs.use');
    const job = await this.find(actor, jobId);
    return await this.database.withOrganisation(actor, async (connection) => {
      const data = new AircraftData(connection, actor.organisationId);
      const row = await data.find(actor, job.aircraft_id);
      if (row === null) throw new AppError({ code: 'NOT_FOUND', what: 'aircraft' });
      const dossier = dossierOf(row);
      const catalogue = await data.catalogueFor(typeIdsOf(dossier));
      const before = new Set(job.open_at_start);
      const words = wordsIn(dossier);
      return openAtRelease(dossier, catalogue, instantOf(this.clock.now())).map((each) => ({
        key: each.key,
        text: messageOf(each, words),
        outcome: each.outcome,
        stops: each.stops && !before.has(each.key),
      }));
    });
  }

  private async find(actor: Actor, id: string): Promise<JobRow> {
    const row = await this.database.withOrganisation(actor, (connection) => jobById(connection, actor, id));
    if (row === null) throw new AppError({ code: 'NOT_FOUND', what: 'job', field: 'input.jobId' });
    return row;
  }
}

/** What puts a job in work: its hold on the record, and after it the job itself. */
function putting(actor: Actor, jobId: string, title: string): Pick<Required<Act>, 'changes' | 'after'> {
  let started: { readonly holdId: string; readonly open: readonly string[] } | null = null;
  return {
    changes: async ({ before, data, now }) => {
      const dossier = dossierOf(before);
      const from = instantOf(now);
      const catalogue = await data.catalogueFor(typeIdsOf(dossier));
      const open = openAtRelease(dossier, catalogue, from).map((each) => each.key);
      const own = dossier.status.holds.filter(({ id }) => jobOfHold(id) === jobId);
      // Stopped work left its hold: it goes on under it, unless somebody lifted it meanwhile.
      const left = own.find(({ until }) => until === null);
      const id = left?.id ?? holdOfJob(jobId, own.length + 1);
      started = { holdId: id, open };
      const hold = { id, reason: title, by: actor.name, from, until: null };
      return left === undefined ? [{ kind: 'hold.place', version: 1, hold }] : [];
    },
    after: async (connection, at) => {
      if (started === null || !(await putInWork(connection, actor, { id: jobId, ...started, at })))
        throw notOpen('input.jobId');
    },
  };
}

function readEntry(sent: Release['entry']): Entry {
  const [change] = readChanges([readChangeInput({ recordAdd: { record: sent } }, 0)]);
  if (change?.kind !== 'record.add') throw new Error('an entry was read as another change');
  const { record } = change;
  if (record.kind !== 'release-entry')
    throw badInput(
      'input.entry.kind',
      'A release wants an entry of release.',
      'Record other entries as work of the job.',
    );
  if (record.evidence !== 'entry-seen')
    throw badInput(
      'input.entry.evidence',
      'A release is an entry that was seen.',
      'Wait for the entry, or stop the job.',
    );
  if (record.agency === null)
    throw badInput(
      'input.entry.agency',
      'Nobody has signed the release.',
      'Name who approves it, with certificate and ratings.',
    );
  return record;
}

function checkDay({ done }: Entry, { started_at: startedAt }: JobRow, dossier: Dossier): void {
  const { zone } = dossier.configuration.aircraft.base;
  if (startedAt === null || done.date >= civilDateAt(instantOf(startedAt), zone)) return;
  throw badInput('input.entry.done.date', 'The work began after this day.', 'Give the day of the release.');
}

/** What was open before the work began is not this release's to close, but whoever signs has looked at it. */
function refuseOpen(
  open: readonly OpenAtRelease[],
  before: ReadonlySet<string>,
  seen: ReadonlySet<string>,
  entryId: string,
  words: MessageWords,
): void {
  const refusals = open.flatMap((each): Refusal[] => {
    const stops = each.stops && (!before.has(each.key) || each.subject === entryId);
    if (!stops && seen.has(each.key)) return [];
    return [
      {
        change: null,
        code: stops ? 'open-at-release' : 'not-looked-at',
        field: stops ? 'entry' : 'seen',
        message: messageOf(each, words),
        wayOut: stops ? 'Close it first, or stop the job without a release.' : 'Look at it; then release.',
      },
    ];
  });
  if (refusals.length > 0) throw new AppError({ code: 'REFUSED', refusals });
}

function notInWork(): AppError {
  return badInput('input.jobId', 'This job is not in work.', 'Look at it again.');
}
