import { defaultLabour, houseLabour, labourOf } from '@tallywing/rules';
import type { HouseLabour, Job } from '@tallywing/rules';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { addLabour, currentLabour } from './labour.data.js';
import type { LabourVersion } from './labour.data.js';

export interface SetLabour extends Omit<HouseLabour, 'jobs'> {
  readonly expectedVersion: number;
  readonly jobs: readonly {
    readonly job: string;
    readonly low: number;
    readonly typical: number;
    readonly high: number;
    readonly parts?: number | null;
  }[];
}

/** Hours and prices of the house: what the way back reckons with. No verdict hangs on them. */
export class LabourService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async table(actor: Actor | null) {
    authorise(actor, 'labour.read');
    return await this.database.withOrganisation(actor, async (connection) =>
      tableOf(await currentLabour(connection, actor.organisationId)),
    );
  }

  /** @throws AppError BAD_INPUT naming the field, STALE_REVISION where another version came meanwhile */
  async set(actor: Actor | null, input: SetLabour) {
    authorise(actor, 'labour.write');
    const body = read(input);
    return await this.database.withOrganisation(actor, async (connection) => {
      const now = await currentLabour(connection, actor.organisationId);
      const next = { version: now.version + 1, body, memberId: actor.memberId, at: this.clock.now() };
      const added = now.version === input.expectedVersion && (await addLabour(connection, actor.organisationId, next));
      if (!added) throw await stale(connection, actor);
      return tableOf(await currentLabour(connection, actor.organisationId));
    });
  }
}

async function stale(connection: Connection, actor: Actor): Promise<AppError> {
  const { version, setBy, setAt } = await currentLabour(connection, actor.organisationId);
  return new AppError({
    code: 'STALE_REVISION',
    revision: version,
    changedBy: setBy ?? 'nobody',
    changedAt: setAt === null ? '' : instantOf(setAt),
    what: 'table of hours and prices',
    kept: true,
  });
}

function read(input: SetLabour): HouseLabour {
  const { hourly = null, currency = null } = input;
  if (hourly !== null && currency === null)
    throw badInput('input.currency', 'A price needs its currency.', 'Write the word or sign that stands beside it.');
  const twice = input.jobs.findIndex(({ job }, index) => input.jobs.some((each, at) => at < index && each.job === job));
  if (twice >= 0) throw badInput(`input.jobs.${twice}.job`, 'This job stands twice.', 'Leave one of the two out.');
  const strange = input.jobs.findIndex(({ job }) => !Object.hasOwn(defaultLabour.jobs, job));
  if (strange >= 0)
    throw badInput(`input.jobs.${strange}.job`, 'There is no such job.', 'Use the jobs that the table lists.');
  const jobs = Object.fromEntries(
    input.jobs.map(({ job, low, typical, high, parts = null }) => [job, { low, typical, high, parts }]),
  );
  const found = houseLabour.safeParse({ hourly, currency, jobs });
  if (found.success) return found.data;
  const [issue] = found.error.issues;
  throw badInput(fieldOf(issue?.path ?? [], input), issue?.message ?? 'This cannot be read.', wayOut);
}

const wayOut = 'Hours are 0 to 10,000 with low at most typical at most high; prices are not negative.';

/** A job is named by its place in what was sent. */
function fieldOf(path: readonly PropertyKey[], { jobs }: SetLabour): string {
  const [first, job, ...rest] = path.map(String);
  if (first !== 'jobs' || job === undefined) return ['input', ...path.map(String)].join('.');
  return ['input.jobs', jobs.findIndex((each) => each.job === job), ...rest].join('.');
}

function tableOf({ version, body, setAt, setBy }: LabourVersion) {
  const { jobs } = labourOf(body);
  return {
    version,
    setBy,
    setAt: setAt === null ? null : instantOf(setAt),
    hourly: body.hourly,
    currency: body.currency,
    jobs: (Object.keys(defaultLabour.jobs) as Job[]).map((job) => {
      const { parts, ...hours } = jobs[job];
      const { status: usualStatus, ...usual } = defaultLabour.jobs[job];
      return { job, hours, parts, own: body.jobs[job] !== undefined, usual, usualStatus };
    }),
  };
}
