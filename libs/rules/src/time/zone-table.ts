import { letters, oneLetter, patterns, steps, zones } from './zone-data.js';

export interface Zone {
  /** Minutes since 1970 at which the offset changes, ascending. */
  readonly changes: readonly number[];
  /** Minutes east of UTC: the first before the first change, then one after each change. */
  readonly offsets: readonly number[];
}

/** A row of the table, shared by all names of a zone. */
export interface Row {
  readonly data: string;
}

export const rowOf: ReadonlyMap<string, Row> = new Map(
  zones.flatMap((text) => {
    const [data = '', names = ''] = text.split('|');
    const row = { data };
    return names.split(' ').map((name) => [name, row] as const);
  }),
);

/** What a row says, in the notation that `scripts/generate-zone-data.mjs` writes. */
export function zoneIn({ data }: Row): Zone {
  const [offsetText = '', firstText = '', patternText = ''] = data.split(' ');
  const offsets = offsetText.split(',').map(Number);
  const pattern = patterns[Number(patternText)];
  if (pattern === undefined) return { changes: [], offsets };
  const [stepText = '', order = ''] = pattern.split(' ');
  const changes = [Number(firstText)];
  for (const step of stepsIn(stepText)) changes.push((changes.at(-1) ?? 0) + step);
  const after = changes.map((_, i) => (order === '' ? (i + 1) % 2 : parseInt(order.charAt(i), 36)));
  return { changes, offsets: [0, ...after].map((index) => offsets[index] ?? 0) };
}

/** Minutes from each change to the next: the steps have one letter, the rarer ones two. */
function stepsIn(text: string): number[] {
  const found: number[] = [];
  for (let i = 0; i < text.length; i += 1) {
    let code = letters.indexOf(text.charAt(i));
    if (code >= oneLetter) {
      i += 1;
      code = oneLetter + (code - oneLetter) * oneLetter + letters.indexOf(text.charAt(i));
    }
    found.push(steps[code] ?? 0);
  }
  return found;
}
