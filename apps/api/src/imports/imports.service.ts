import { randomUUID } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import type { RecordService } from '../aircraft/record.service.js';
import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import { AppError, describe, toProblem } from '../common/errors.js';
import type { AppLog } from '../common/logging.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { BoardCounts } from './board.js';
import type { UploadedFile } from './csv.js';
import type { ImportRow, ImportsData } from './imports.data.js';
import { progressOn, writeLists } from './imports.data.js';
import { Plan } from './plan.js';
import type { Decision } from './planner.js';
import type { FilesRead } from './read-files.js';
import { readFiles } from './read-files.js';
import type { ImportMode, ImportProgress, ImportReport, ImportState } from './report.js';
import { reportOf, Tally } from './report.js';

const PROGRESS_EVERY_MS = 300;
const MOST_LISTED = 50;
/** Aircraft that are read, planned and recorded in one go: what is held in memory, and what a stop leaves to be done again. */
const AT_ONCE = 20;
/** Somebody else may record on the same aircraft in between: then that part is read and planned anew. */
const TRIES = 4;

type Hear = (progress: ImportProgress) => void;
type Tell = (progress: ImportProgress, always?: boolean) => Promise<void>;

/**
 * Reads files, says what they would do, and loads them. Nothing is loaded while a row is bad or a difference undecided. Each aircraft is
 * loaded whole; a load that stops half-way goes on when it is started again, because what is in says nothing new.
 */
export class ImportsService {
  constructor(
    private readonly data: ImportsData,
    private readonly records: RecordService,
    private readonly clock: Clock,
    private readonly log: AppLog,
  ) {}

  /**
   * Starts an import and returns at once; `finished` settles when it has ended, whatever came out.
   * @param hear hears each step of the progress, outside any transaction
   * @throws AppError FORBIDDEN: loading is the manager's, a dry run also the technician's
   */
  async start(
    actor: Actor | null,
    asked: { readonly mode: ImportMode; readonly files: readonly UploadedFile[]; readonly decision: Decision },
    hear: Hear = () => undefined,
  ): Promise<{ readonly id: string; readonly finished: Promise<void> }> {
    authorise(actor, asked.mode === 'load' ? 'import.load' : 'import.check');
    const id = randomUUID();
    await this.data.begin(actor, id, asked.mode, this.clock.now());
    return { id, finished: this.run(actor, id, asked, hear) };
  }

  /**
   * Asks a load to stop after the part it is at. What is in stays in.
   * @throws AppError NOT_FOUND where nothing of this name runs
   */
  async stop(actor: Actor | null, id: string): Promise<ImportRow> {
    authorise(actor, 'import.load');
    if (!(await this.data.askToStop(actor, id))) throw new AppError({ code: 'NOT_FOUND', what: 'running import' });
    return await this.find(actor, id);
  }

  /** @throws AppError NOT_FOUND */
  async find(actor: Actor | null, id: string): Promise<ImportRow> {
    authorise(actor, 'import.check');
    const found = await this.data.find(actor, id, this.clock.now());
    if (!found) throw new AppError({ code: 'NOT_FOUND', what: 'import' });
    return found;
  }

  /** The newest first. */
  async recent(actor: Actor | null): Promise<readonly ImportRow[]> {
    authorise(actor, 'import.check');
    return await this.data.recent(actor, MOST_LISTED, this.clock.now());
  }

  private async run(
    actor: Actor,
    id: string,
    { mode, files, decision }: { mode: ImportMode; files: readonly UploadedFile[]; decision: Decision },
    hear: Hear,
  ): Promise<void> {
    let report: ImportReport | null = null;
    try {
      const tell = this.teller(actor, id, hear);
      await tell({ step: 'reading', done: 0, total: files.length }, true);
      await setImmediate();
      const read = readFiles(files);
      report = await this.check(actor, read, decision, tell);
      if (mode === 'dry-run') return await this.data.end(actor, id, 'checked', report);
      report = { ...report, problem: undecided(report) };
      if (report.badCount > 0 || report.problem !== null) return await this.data.end(actor, id, 'refused', report);
      const whole = await this.load(actor, id, read, decision, hear);
      await this.data.end(actor, id, whole ? 'loaded' : 'interrupted', report);
    } catch (error) {
      await this.fail(actor, id, report, error);
    }
  }

  /** Plans and judges the whole fleet, part by part; keeps the counts and what has to be told. */
  private async check(actor: Actor, read: FilesRead, decision: Decision, tell: Tell): Promise<ImportReport> {
    const now = instantOf(this.clock.now());
    const { house, profiles } = await this.data.house(actor, now);
    const plan = new Plan(read, house, decision);
    const tally = new Tally();
    const board = new BoardCounts(profiles, now);
    const registrations = read.registrations;
    let done = 0;
    await tell({ step: 'checking', done, total: registrations.length }, true);
    for (const part of partsOf(registrations)) {
      const planned = plan.take(part, await this.data.aircraft(actor, part, read.carried));
      tally.add(planned);
      await board.add(planned, plan.catalogue, () => undefined);
      done += part.length;
      await tell({ step: 'checking', done, total: registrations.length });
    }
    return reportOf(plan.findings(), tally, board.counts);
  }

  /** One transaction for each part of the fleet, its progress with it. False where somebody asked it to stop. */
  private async load(actor: Actor, id: string, read: FilesRead, decision: Decision, hear: Hear): Promise<boolean> {
    const registrations = read.registrations;
    const total = registrations.length;
    let done = 0;
    // Without an aircraft there may still be equipment types to take.
    for (const part of total === 0 ? [[]] : partsOf(registrations)) {
      if (await this.data.stopAsked(actor, id)) return false;
      done += part.length;
      const progress = { step: 'loading', done, total };
      await this.loadPart(actor, id, part, read, decision, progress);
      hear(progress);
      await setImmediate();
    }
    return true;
  }

  private async loadPart(
    actor: Actor,
    id: string,
    part: readonly string[],
    read: FilesRead,
    decision: Decision,
    progress: ImportProgress,
  ): Promise<void> {
    for (let tries = 1; ; tries += 1) {
      const { house } = await this.data.house(actor, instantOf(this.clock.now()));
      const plan = new Plan(read, house, decision);
      const planned = plan.take(part, await this.data.aircraft(actor, part, read.carried));
      const findings = plan.findings();
      refuseNews(findings, part);
      const requests = planned
        .filter(({ changes }) => changes.length > 0)
        .map(({ aircraftId, revision, changes }) => ({
          aircraftId,
          expectedRevision: revision,
          key: `import:${id}:${aircraftId}`,
          changes,
        }));
      try {
        await this.records.commitInOneTransaction(actor, requests, {
          before: (connection) => writeLists(connection, actor, findings, this.clock.now()),
          after: (connection) => progressOn(connection, actor, id, progress, this.clock.now()),
        });
        return;
      } catch (error) {
        if (tries === TRIES || !isRace(error)) throw error;
      }
    }
  }

  private async fail(actor: Actor, id: string, report: ImportReport | null, error: unknown): Promise<void> {
    const told = describe(toProblem(error, id, this.log));
    const problem = { reason: told.message, wayOut: told.extensions.wayOut };
    const state: ImportState = error instanceof AppError ? 'refused' : 'failed';
    const empty = reportOf(nothing, new Tally(), []);
    await this.data.end(actor, id, state, { ...(report ?? empty), problem }).catch((reason: unknown) => {
      // The database is gone: the run counts as interrupted when nothing more is heard of it.
      this.log.failure(id, reason);
    });
  }

  /** Progress is written between transactions, at most a few times a second. */
  private teller(actor: Actor, id: string, hear: Hear): Tell {
    let last = 0;
    return async (progress, always = false) => {
      hear(progress);
      const now = this.clock.now();
      if (!always && now.getTime() - last < PROGRESS_EVERY_MS) return;
      last = now.getTime();
      await this.data.progress(actor, id, progress, now).catch((error: unknown) => {
        // A lost line of progress must not cost the import.
        this.log.failure(id, error);
      });
    };
  }
}

function partsOf(registrations: readonly string[]): readonly string[][] {
  const parts: string[][] = [];
  for (let at = 0; at < registrations.length; at += AT_ONCE) parts.push(registrations.slice(at, at + AT_ONCE));
  return parts;
}

function undecided({ differences, differenceCount }: ImportReport): ImportReport['problem'] {
  if (!differences.some(({ taken }) => taken === null)) return null;
  return {
    reason: `The files say otherwise than what is recorded in ${differenceCount} ${differenceCount === 1 ? 'place' : 'places'}.`,
    wayOut: 'Say for each whether the word of the file is taken or what is recorded stays.',
  };
}

/** The whole fleet was good a moment ago: what is bad or undecided now was recorded by somebody else since. */
function refuseNews({ bad, differences }: ReturnType<Plan['findings']>, part: readonly string[]): void {
  const own = new Set(part);
  const news = bad[0] ?? differences.find(({ registration, taken }) => own.has(registration) && taken === null);
  if (news === undefined) return;
  throw new AppError({
    code: 'BAD_INPUT',
    field: 'files',
    reason: `Somebody recorded something meanwhile that line ${news.line ?? 1} of ${news.file} disagrees with.`,
    wayOut: 'Make another dry run and decide; what is in stays in and is not doubled.',
  });
}

/** Two people load or record the same aircraft at once: the second looks again and finds it there. */
function isRace(error: unknown): boolean {
  if (!(error instanceof AppError))
    return ['40P01', '40001'].includes(String((error as { code?: unknown } | null)?.code));
  const { problem } = error;
  return (
    problem.code === 'STALE_REVISION' ||
    (problem.code === 'NOT_FOUND' && problem.what === 'aircraft') ||
    (problem.code === 'REFUSED' && problem.refusals.some(({ code }) => code === 'registration-taken'))
  );
}

const nothing = {
  files: [],
  newOperators: [],
  newTypes: [],
  keptTypes: [],
  bad: [],
  remarks: [],
  differences: [],
  uncatalogued: [],
};
