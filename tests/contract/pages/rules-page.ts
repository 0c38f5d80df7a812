import { ruleBook } from '../../../libs/rules/src/assess/rule-book.js';
import type { SourceRef } from '../../../libs/rules/src/facts/source.js';
import type { RuleMeta } from '../../../libs/rules/src/rules/rule.js';
import { topics } from '../../../libs/rules/src/rules/rule.js';
import type { Effect } from '../../../libs/rules/src/verdict/result.js';
import type { Cell } from './worked.js';
import { escaped, inWords, workedCells } from './worked.js';

/** For each rule: what it asks, whom it binds, what it may cost, its words, its sources, and cases of the matrix that ran. */
export function rulesPage(): string {
  const cells = workedCells();
  const statuses = new Map<string, number>();
  for (const source of ruleBook.flatMap((rule) => rule.sources))
    statuses.set(source.status, (statuses.get(source.status) ?? 0) + 1);
  return `# The rules

${ruleBook.length} rules in ${topics.length} topics. Made from the rules themselves; the cases are aircraft and flights of [the matrix](matrix.md), judged
when this page was made. Sources by status: ${[...statuses]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([status, count]) => `${status} ${count}`)
    .join(', ')}. The approved data, local rules and licensed people decide.

${topics.map((topic) => `- [${topic}](#${topic}): ${rulesOf(topic).map(link).join(', ')}`).join('\n')}

${topics
  .map(
    (topic) =>
      `## ${topic}\n\n${rulesOf(topic)
        .map((rule) => section(rule, cells))
        .join('\n\n')}`,
  )
  .join('\n\n')}
`;
}

function rulesOf(topic: string): readonly RuleMeta[] {
  return ruleBook.filter((rule) => rule.topic === topic).sort((a, b) => (a.id < b.id ? -1 : 1));
}

function link({ id }: RuleMeta): string {
  return `[${id}](#${id})`;
}

function section(rule: RuleMeta, cells: readonly Cell[]): string {
  const worked = casesOf(rule, cells);
  const costs = costsOf(rule, cells);
  return [
    `### ${rule.id}`,
    `${rule.asks}`,
    `Binds: ${rule.binds}`,
    ...(costs.length > 0 ? [`Costs where it is not met: ${costs.join(', ')}.`] : []),
    `What it says:\n\n${Object.entries(rule.messages)
      .map(([id, text]) => `- ${id}: ${escaped(text)}`)
      .join('\n')}`,
    `Sources:\n\n${rule.sources.map((each) => `- ${sourceWords(each)}`).join('\n')}`,
    ...(worked.length > 0 ? [`Cases:\n\n${worked.map((each) => `- ${each}`).join('\n')}`] : []),
  ].join('\n\n');
}

function sourceWords({ document, paragraph, edition, status }: SourceRef): string {
  return `${[document, paragraph, edition].filter((each) => each !== '').join(', ')} (${status})`;
}

/** The first case of each message. */
function casesOf(rule: RuleMeta, cells: readonly Cell[]): readonly string[] {
  const seen = new Map<string, string>();
  for (const { aircraft, flight, results } of cells)
    for (const result of results)
      if (result.ruleId === rule.id && !seen.has(result.messageId))
        seen.set(result.messageId, `${aircraft}, ${flight}: ${result.outcome}. ${escaped(inWords(result))}`);
  return [...seen].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, text]) => text);
}

function costsOf(rule: RuleMeta, cells: readonly Cell[]): readonly string[] {
  const effects = cells.flatMap(({ results }) =>
    results.filter((each) => each.ruleId === rule.id).flatMap((each) => each.effects),
  );
  return [...new Set(effects.map(effectWords))].sort();
}

function effectWords(effect: Effect): string {
  if (effect.stops === 'capability')
    return effect.through === undefined ? effect.capability : `${effect.capability} by the unit concerned`;
  if (effect.stops === 'nothing') return `nothing (${effect.kind})`;
  return `the ${effect.stops}`;
}
