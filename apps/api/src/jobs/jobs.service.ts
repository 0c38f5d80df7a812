import { randomUUID } from 'node:crypto';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { summaryOf } from '../fleet/summaries.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { createJob, discard, jobById, openJobs, saveDraft } from './jobs.data.js';
import type { JobRow } from './jobs.data.js';

const LONGEST_DRAFT = 200_000;

/** Planned work. A draft is the planner's own text: nothing here reads it, so an old form of it is never lost. */
export class JobsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor | null, aircraftId: string | null) {
    authorise(actor, 'jobs.use');
    return await this.database.withOrganisation(actor, async (connection) =>
      (await openJobs(connection, actor, aircraftId)).map(nodeOf),
    );
  }

  async find(actor: Actor | null, id: string) {
    authorise(actor, 'jobs.use');
    const row = await this.database.withOrganisation(actor, (connection) => jobById(connection, actor, id));
    return row === null ? null : nodeOf(row);
  }

  async create(actor: Actor | null, input: { readonly aircraftId: string; readonly title: string }) {
    authorise(actor, 'jobs.use');
    const title = checkedTitle(input.title);
    const id = randomUUID();
    return await this.database.withOrganisation(actor, async (connection) => {
      const made = await createJob(connection, actor, {
        id,
        aircraftId: input.aircraftId,
        title,
        at: this.clock.now(),
      });
      if (!made) throw new AppError({ code: 'NOT_FOUND', what: 'aircraft', field: 'input.aircraftId' });
      return await reread(connection, actor, id);
    });
  }

  async save(
    actor: Actor | null,
    input: { readonly jobId: string; readonly revision: number; readonly draftSchema: number; readonly draft: string },
  ) {
    authorise(actor, 'jobs.use');
    if (input.draft.length > LONGEST_DRAFT)
      throw new AppError({ code: 'TOO_LARGE', limit: `${LONGEST_DRAFT} characters` });
    if (!isJson(input.draft)) throw badInput('input.draft', 'The draft is not JSON.', 'Send the plan as JSON text.');
    if (input.revision < 0)
      throw badInput(
        'input.revision',
        'A revision is a whole number from 0.',
        'Send the revision the plan was made on.',
      );
    return await this.database.withOrganisation(actor, async (connection) => {
      await mustSee(connection, actor, input.jobId);
      const saved = await saveDraft(connection, actor, { ...input, text: input.draft, at: this.clock.now() });
      if (!saved) throw notOpen('input.jobId');
      return await reread(connection, actor, input.jobId);
    });
  }

  async discard(actor: Actor | null, id: string) {
    authorise(actor, 'jobs.use');
    return await this.database.withOrganisation(actor, async (connection) => {
      await mustSee(connection, actor, id);
      if (!(await discard(connection, actor, id, this.clock.now()))) throw notOpen('id');
      return await reread(connection, actor, id);
    });
  }
}

async function mustSee(connection: Connection, actor: Actor, id: string): Promise<void> {
  if ((await jobById(connection, actor, id)) === null) throw new AppError({ code: 'NOT_FOUND', what: 'job' });
}

async function reread(connection: Connection, actor: Actor, id: string) {
  const row = await jobById(connection, actor, id);
  if (row === null) throw new AppError({ code: 'NOT_FOUND', what: 'job' });
  return nodeOf(row);
}

export function checkedTitle(given: string): string {
  const title = given.trim();
  if (title === '' || title.length > 200)
    throw badInput('input.title', 'The title has 1 to 200 characters.', 'Say in a few words what is to be done.');
  return title;
}

export function notOpen(field: string): AppError {
  return badInput(field, 'This job is in work, or over.', 'Look at it again, or begin a new one.');
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

export function nodeOf(row: JobRow) {
  return {
    id: row.job_id,
    aircraft: summaryOf(row),
    title: row.title,
    state: row.state,
    revision: row.job_revision,
    draftSchema: row.draft_schema,
    draft: row.draft.text,
    createdBy: row.created_by_name,
    updatedAt: instantOf(row.updated_at),
    startedAt: row.started_at === null ? null : instantOf(row.started_at),
    startedBy: row.started_by_name,
    holdId: row.hold_id,
    openAtStart: row.open_at_start ?? [],
    endedBecause: row.ended_because,
  };
}
