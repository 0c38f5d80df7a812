import { dateWords } from '@tallywing/rules';
import { statusOfAnswer } from '../../trade/verdict.js';
import { statusWords, type Status } from '../../ui/status-words.js';
import type { LineAnswer } from './query.js';

/** One stretch of the line: from and to as shares of its length, 0 to 1. */
export interface LinePart {
  readonly key: string;
  readonly status: Status;
  readonly start: number;
  readonly end: number;
}

/** A place where the answer changes, numbered on the line and named in its table. */
export interface LineEdge {
  readonly number: number;
  readonly share: number;
  readonly at: string;
  readonly projected: boolean;
  readonly was: Status;
  readonly is: Status;
  readonly because: readonly string[];
}

export interface LineView {
  readonly parts: readonly LinePart[];
  readonly edges: readonly LineEdge[];
  readonly months: readonly { readonly share: number; readonly name: string }[];
  readonly summary: string;
}

/** The coming months of one profile as one line. Neighbours that say the same are one part, so that an edge is a change. */
export function lineOf(stretches: LineAnswer, when: (instant: string) => string): LineView {
  const first = stretches[0];
  const last = stretches[stretches.length - 1];
  if (!first || !last) return { parts: [], edges: [], months: [], summary: 'Nothing is known of the coming months.' };
  const [from, to] = [Date.parse(first.from), Date.parse(last.to)];
  const share = (instant: string) => (Date.parse(instant) - from) / (to - from);
  const joined = join(stretches);
  const parts = joined.map((each) => ({
    key: each.from,
    status: statusOfAnswer(each),
    start: share(each.from),
    end: share(each.to),
  }));
  const edges = joined.slice(1).map((each, index): LineEdge => {
    const before = joined[index] ?? each;
    return {
      number: index + 1,
      share: share(each.from),
      at: each.from,
      projected: before.projected,
      was: statusOfAnswer(before),
      is: statusOfAnswer(each),
      because: before.endsBecause.map((because) => because.text),
    };
  });
  return { parts, edges, months: monthsBetween(from, to), summary: summaryOf(parts[0]?.status, edges, when) };
}

function join(stretches: LineAnswer): LineAnswer {
  const joined: LineAnswer[number][] = [];
  for (const each of stretches) {
    const before = joined[joined.length - 1];
    if (before && statusOfAnswer(before) === statusOfAnswer(each)) {
      joined[joined.length - 1] = { ...before, to: each.to, endsBecause: each.endsBecause, projected: each.projected };
    } else joined.push(each);
  }
  return joined;
}

function summaryOf(now: Status | undefined, edges: readonly LineEdge[], when: (instant: string) => string): string {
  const today = `${now ? statusWords[now] : 'Not judged'} now`;
  const [next] = edges;
  if (!next) return `${today}; nothing known changes that within the line.`;
  const by = next.projected ? ', by the hours expected' : '';
  return `${today}; ${statusWords[next.is].toLowerCase()} from ${when(next.at)}${by}.`;
}

/** The first of each month on the way, by its short name. */
function monthsBetween(from: number, to: number): { share: number; name: string }[] {
  const months: { share: number; name: string }[] = [];
  const start = new Date(from);
  for (let step = 1; ; step += 1) {
    const at = Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + step, 1);
    if (at >= to) return months;
    const name = dateWords(new Date(at).toISOString().slice(0, 10)).split(' ')[1] ?? '';
    months.push({ share: (at - from) / (to - from), name });
  }
}
