import { capabilityWords, codeWords, dateWords, factWords } from '@tallywing/rules';
import type { Dossier, Explained, Leaf, Names } from '@tallywing/rules';
import type { Reason } from '../ui/reason-tree.js';
import { hoursWords } from '../ui/words.js';
import { jointWords, unitWords } from './units.js';

/** What a clause needs of its aircraft to be put into words. */
export interface ReasonContext {
  /** UTC instant to local time of the aircraft's base, in words. */
  readonly when: (instant: string) => string;
  readonly meterName: (id: string) => string;
  /** What an entry, a joint or a paper that stands behind a clause is called. */
  readonly evidence: (id: string) => string;
  readonly names: Names;
}

const evidenceWords: Readonly<Record<string, string>> = {
  'entry-seen': 'entry seen',
  reported: 'reported, entry not seen',
  assumed: 'assumed',
};

/** The clauses of one result, ready for the reason tree. `id` must be unique on the page. */
export function reasonOf(explained: Explained, context: ReasonContext, id: string): Reason {
  const { clause, outcome, parts } = explained;
  const members = parts.map((part, index) => reasonOf(part, context, `${id}.${index}`));
  if (clause.is === 'leaf') return leafReason(clause, outcome, context, id);
  if (clause.is === 'ref') return { id, outcome, title: capabilityWords(clause.capability), members };
  if (clause.is === 'implies') {
    return { id, outcome, title: 'Only where the first applies', asks: 'then the second is asked', members };
  }
  return { id, outcome, title: codeWords(clause.label), asks: asksWords(clause.is, clause.n, members.length), members };
}

function asksWords(is: 'all' | 'any' | 'at-least', n: number | undefined, members: number): string | undefined {
  if (members < 2 && is !== 'at-least') return undefined;
  if (is === 'all') return 'all of';
  return is === 'any' ? 'any one of' : `at least ${n ?? 0} of`;
}

function leafReason(leaf: Leaf, outcome: Reason['outcome'], context: ReasonContext, id: string): Reason {
  return {
    id,
    outcome,
    title: codeWords(leaf.label),
    fact: leaf.value && quantityWords(leaf.value),
    limit: leaf.limit && quantityWords(leaf.limit),
    recorded: leaf.evidence?.map(context.evidence),
    missing: leaf.missing?.map((fact) => factWords(fact, context.names)),
    source: leaf.source,
    changes: changeWords(leaf, context),
    members: [],
  };
}

/** Only a clause whose two sides differ changes by itself. */
function changeWords(leaf: Leaf, context: ReasonContext): string[] {
  if (leaf.inside === leaf.outside) return [];
  const words: string[] = [];
  if (leaf.from !== undefined) words.push(`from ${context.when(leaf.from)}`);
  if (leaf.before !== undefined) words.push(`until ${context.when(leaf.before)}`);
  for (const [meter, limit] of Object.entries(leaf.atMost ?? {})) {
    words.push(`up to ${hoursWords(limit)} on ${context.meterName(meter)}`);
  }
  return words;
}

/** Names what stands behind a clause from the aircraft's own record: entries, joints, units. */
export function evidenceNames(dossier: Dossier): (id: string) => string {
  const { records } = dossier.status;
  const { links, units } = dossier.configuration;
  return (id) => {
    const record = records.find((each) => each.id === id);
    if (record) return recordWords(record);
    const link = links.find((each) => each.id === id);
    if (link) return `joint of ${jointWords(link, units)}`;
    const unit = units.find((each) => each.id === id);
    return unit ? unitWords(unit) : id;
  };
}

function recordWords(record: Dossier['status']['records'][number]): string {
  const entry = record.entry ? `, ${record.entry.book} page ${record.entry.page}` : '';
  const grade = evidenceWords[record.evidence] ?? record.evidence;
  return `${codeWords(record.kind)} of ${dateWords(record.done.date)}${entry} (${grade})`;
}

function quantityWords(quantity: { readonly amount: number; readonly unit: string }): string {
  return `${quantity.amount.toLocaleString('en-US', { maximumFractionDigits: 3 })} ${quantity.unit}`;
}
