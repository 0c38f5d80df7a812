import { codeWords, entryTexts, readEntry } from '@tallywing/rules';
import { problemWords, type FieldProblem } from '../../form/problems.js';
import { valueAt } from '../../form/tree.js';
import { sections, type Entry } from './entry.js';

/** What the core finds wrong with the entry, in words; the same check as on the server. */
export function problemsOf(entry: Entry): readonly FieldProblem[] {
  const read = readEntry(entry);
  if (read.ok) return [];
  return read.problems.map((each) => {
    const { function: codes } = each.data;
    const data = typeof codes === 'string' ? { ...each.data, function: wordsOf(codes) } : each.data;
    return problemWords({ ...each, data }, entry, entryTexts);
  });
}

function wordsOf(codes: string): string {
  return codes.split(', ').map(codeWords).join(', ');
}

/** While somebody is still writing, what is merely empty is no reproach. */
export function withoutEmpty(problems: readonly FieldProblem[], entry: Entry): readonly FieldProblem[] {
  return problems.filter(({ field }) => {
    const value = valueAt(entry, field);
    return !(value === null || value === undefined || value === '' || (Array.isArray(value) && value.length === 0));
  });
}

/** What the server refused, as the form names its fields: 'input.body.ports.0.name' is 'ports.0.name'. */
export function refusedFields(details: Readonly<Record<string, unknown>>): readonly FieldProblem[] {
  const refusals = (details['refusals'] ?? []) as readonly {
    readonly field: string;
    readonly message: string;
    readonly wayOut: string;
  }[];
  return refusals.map(({ field, message, wayOut }) => ({
    field: field.replace(/^input\.?/, '').replace(/^body\.?/, ''),
    says: message,
    wayOut,
  }));
}

/** How much there is to mend in each section that has anything, in their order. */
export function toMend(
  problems: readonly FieldProblem[],
): readonly { readonly id: string; readonly title: string; readonly count: number }[] {
  return sections.flatMap(({ id, title, fields }) => {
    const count = problems.filter(({ field }) => fields.includes(field.split('.')[0] ?? '')).length;
    return count === 0 ? [] : [{ id, title, count }];
  });
}
