import { randomUUID } from 'node:crypto';
import type { RecordService } from '../aircraft/record.service.js';
import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import { AppError, describe, toProblem } from '../common/errors.js';
import type { AppLog } from '../common/logging.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { boardOf } from './board.js';
import type { UploadedFile } from './csv.js';
import type { ImportRow, ImportsData } from './imports.data.js';
import { endOn, writeLists } from './imports.data.js';
import type { Plan } from './plan.js';
import { planImport, registrationsIn } from './plan.js';
import type { ImportMode, ImportProgress, ImportReport, ImportState } from './report.js';
import { reportOf } from './report.js';

const PROGRESS_EVERY_MS = 300;
const MOST_LISTED = 50;

/** Reads files, says what they would do, and loads them all or not at all. */
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
    mode: ImportMode,
    files: readonly UploadedFile[],
    hear: (progress: ImportProgress) => void = () => undefined,
  ): Promise<{ readonly id: string; readonly finished: Promise<void> }> {
    authorise(actor, mode === 'load' ? 'import.load' : 'import.check');
    const id = randomUUID();
    await this.data.begin(actor, id, mode, this.clock.now());
    return { id, finished: this.run(actor, id, mode, files, hear) };
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
    mode: ImportMode,
    files: readonly UploadedFile[],
    hear: (progress: ImportProgress) => void,
  ): Promise<void> {
    let report: ImportReport | null = null;
    try {
      const tell = this.teller(actor, id, hear);
      await tell({ step: 'reading', done: 0, total: files.length }, true);
      const now = this.clock.now();
      const { known, profiles } = await this.data.known(actor, registrationsIn(files), instantOf(now));
      await tell({ step: 'planning', done: 0, total: files.length }, true);
      const plan = planImport(files, known);
      const total = plan.aircraft.length;
      const board = await boardOf(
        plan,
        profiles,
        instantOf(now),
        (done) => void tell({ step: 'judging', done, total }),
      );
      report = reportOf(plan, board);
      if (mode === 'dry-run' || plan.bad.length > 0) {
        await this.data.end(actor, id, mode === 'dry-run' ? 'checked' : 'refused', report);
        return;
      }
      await tell({ step: 'loading', done: 0, total }, true);
      await this.load(actor, id, plan, report);
    } catch (error) {
      await this.fail(actor, id, report, error);
    }
  }

  /** One transaction with the locks in order of ids; the import's own end lands with it. */
  private async load(actor: Actor, id: string, plan: Plan, report: ImportReport): Promise<void> {
    const requests = plan.aircraft
      .filter(({ changes }) => changes.length > 0)
      .map(({ aircraftId, revision, changes }) => ({
        aircraftId,
        expectedRevision: revision,
        key: `import:${id}:${aircraftId}`,
        changes,
      }));
    await this.records.commitInOneTransaction(actor, requests, {
      before: (connection) => writeLists(connection, actor, plan, this.clock.now()),
      after: (connection) => endOn(connection, actor, id, 'loaded', report),
    });
  }

  private async fail(actor: Actor, id: string, report: ImportReport | null, error: unknown): Promise<void> {
    const told = describe(toProblem(error, id, this.log));
    const problem = { reason: told.message, wayOut: told.extensions.wayOut };
    const state: ImportState = error instanceof AppError ? 'refused' : 'failed';
    const empty = reportOf(nothingPlanned, []);
    await this.data.end(actor, id, state, { ...(report ?? empty), problem }).catch((reason: unknown) => {
      // The database is gone: the run counts as interrupted when nothing more is heard of it.
      this.log.failure(id, reason);
    });
  }

  /** Progress is written between transactions, at most a few times a second. */
  private teller(actor: Actor, id: string, hear: (progress: ImportProgress) => void) {
    let last = 0;
    return async (progress: ImportProgress, always = false): Promise<void> => {
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

const nothingPlanned: Plan = {
  files: [],
  aircraft: [],
  newOperators: [],
  newTypes: [],
  catalogue: { version: 'none', types: {} },
  bad: [],
  remarks: [],
};
