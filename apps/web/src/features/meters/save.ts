import type { Problem } from '../../app/problem.js';
import type { RecordInput } from './query.js';
import type { Batch } from './sheet.js';

/** What became of the readings of one aircraft. */
export type Outcome =
  | { readonly kind: 'recorded'; readonly firstEntry: number; readonly lastEntry: number }
  | { readonly kind: 'waits' }
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'meanwhile'; readonly why: string }
  | { readonly kind: 'not-sent'; readonly why: string };

/** A request whose answer did not come: it may have been recorded, so it is sent again as it was. */
export interface Attempt {
  readonly mark: string;
  readonly input: RecordInput;
}

export interface Saved {
  readonly firstEntry: number;
  readonly lastEntry: number;
}

export interface SaveHooks {
  readonly send: (input: RecordInput) => Promise<Saved>;
  readonly problemOf: (error: unknown) => Problem;
  readonly newKey: () => string;
  /** Told before the first is sent and after each. */
  readonly onProgress: (done: number, total: number) => void;
  readonly onOutcome: (batch: Batch, outcome: Outcome) => void;
  readonly keepAttempt: (aircraftId: string, attempt: Attempt | null) => void;
}

/** After these nothing is known of the request itself. */
const unanswered = new Set(['OFFLINE', 'UNAVAILABLE', 'INTERNAL']);
/** After these the next request would fare no better. */
const stops = new Set(['OFFLINE', 'SIGNED_OUT']);

/**
 * Records the readings, aircraft by aircraft, each in a transaction of its own: one that is refused holds up no other. Lines
 * on which something is open wait. Once the network or the session is gone, the rest is not sent.
 */
export async function saveSheet(
  batches: readonly Batch[],
  attempts: Readonly<Record<string, Attempt>>,
  { send, problemOf, newKey, onProgress, onOutcome, keepAttempt }: SaveHooks,
): Promise<void> {
  const ready = batches.filter((batch) => batch.open.length === 0);
  for (const batch of batches) if (batch.open.length > 0) onOutcome(batch, { kind: 'waits' });
  let stopped: string | null = null;
  onProgress(0, ready.length);
  for (const [index, batch] of ready.entries()) {
    const { id } = batch.row.aircraft;
    if (stopped !== null) onOutcome(batch, { kind: 'not-sent', why: stopped });
    else {
      const earlier = attempts[id];
      const input =
        earlier?.mark === batch.mark
          ? earlier.input
          : { aircraftId: id, expectedRevision: batch.row.revision, key: newKey(), changes: batch.changes };
      keepAttempt(id, { mark: batch.mark, input });
      try {
        const { firstEntry, lastEntry } = await send(input);
        keepAttempt(id, null);
        onOutcome(batch, { kind: 'recorded', firstEntry, lastEntry });
      } catch (error) {
        const problem = problemOf(error);
        if (!unanswered.has(problem.code)) keepAttempt(id, null);
        const outcome = outcomeOf(problem, batch);
        if (stops.has(problem.code)) stopped = sentence(problem);
        onOutcome(batch, outcome);
      }
    }
    onProgress(index + 1, ready.length);
  }
}

function outcomeOf(problem: Problem, batch: Batch): Outcome {
  if (problem.code === 'STALE_REVISION')
    return {
      kind: 'meanwhile',
      why: `${problem.title} Look at the last reading as it is now, then record again.`,
    };
  if (unanswered.has(problem.code) || stops.has(problem.code)) return { kind: 'not-sent', why: sentence(problem) };
  const refusals = (problem.details['refusals'] ?? []) as readonly {
    readonly change: number | null;
    readonly message: string;
    readonly wayOut: string;
  }[];
  const meterOf = (change: number | null): string => {
    const key = change === null ? undefined : batch.keys[change];
    const name = batch.row.meters.find((each) => key?.endsWith(` ${each.id}`))?.name;
    return name === undefined ? '' : `${name}: `;
  };
  const words = refusals.map(({ change, message, wayOut }) => `${meterOf(change)}${message} ${wayOut}`);
  return { kind: 'refused', why: words.length > 0 ? words.join(' ') : sentence(problem) };
}

function sentence({ title, wayOut }: Problem): string {
  return [title, wayOut].filter(Boolean).join(' ');
}
