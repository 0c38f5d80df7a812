import { valueAt } from './tree.js';

/** What is wrong with one field of a form, and the way out. `field` is '' for the form as a whole. */
export interface FieldProblem {
  readonly field: string;
  readonly says: string;
  readonly wayOut: string;
}

/** Why the core did not take a value: a code with the field it concerns and the data behind it. */
interface Refusal<Code extends string> {
  readonly code: Code;
  readonly field: string;
  readonly data: Readonly<Record<string, string | number | null>>;
}

/** A refusal in words, from the core's own texts; an empty field simply asks to be filled in. */
export function problemWords<Code extends string>(
  refusal: Refusal<Code>,
  value: unknown,
  allTexts: Readonly<Record<Code, { readonly says: string; readonly wayOut: string }>>,
): FieldProblem {
  const { field } = refusal;
  if (refusal.code === 'malformed') {
    const given = valueAt(value, field);
    if (given === null || given === undefined || given === '')
      return { field, says: 'This is still empty.', wayOut: 'Fill it in.' };
    return { field, says: plainProblem(String(refusal.data['problem'] ?? '')), wayOut: '' };
  }
  const texts = allTexts[refusal.code];
  return { field, says: filled(texts.says, refusal.data), wayOut: filled(texts.wayOut, refusal.data) };
}

/** The schema library's own words are for programmers; these are not. */
function plainProblem(problem: string): string {
  const least = /expected (?:number|int) to be (>=?)\s*(-?[\d.]+)/.exec(problem);
  if (least) return `Must be ${least[1] === '>' ? 'more than' : 'at least'} ${least[2]}.`;
  const most = /expected (?:number|int) to be (<=?)\s*(-?[\d.]+)/.exec(problem);
  if (most) return `Must be ${most[1] === '<' ? 'less than' : 'at most'} ${most[2]}.`;
  const longest = /expected string to have <=(\d+)/.exec(problem);
  if (longest) return `Must have at most ${longest[1]} characters.`;
  if (/expected array to have >=1/.test(problem)) return 'Must name at least one.';
  if (/expected number/.test(problem)) return 'This is not a number.';
  if (/expected int/.test(problem)) return 'Must be a whole number.';
  if (/Invalid option/.test(problem)) return 'Choose one of the list.';
  const text = problem.charAt(0).toUpperCase() + problem.slice(1);
  return text.endsWith('.') ? text : `${text}.`;
}

function filled(template: string, data: Refusal<string>['data']): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => String(data[name] ?? ''));
}

/** The problem that belongs to one field, in one line. */
export function problemAt(problems: readonly FieldProblem[], field: string): string | null {
  const found = problems.filter((problem) => problem.field === field);
  return found.length === 0 ? null : found.map((problem) => `${problem.says} ${problem.wayOut}`.trim()).join(' ');
}
