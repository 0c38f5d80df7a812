import { ruleBook } from '../../../libs/rules/src/assess/rule-book.js';
import type { SourceRef } from '../../../libs/rules/src/facts/source.js';
import type { Cost, Worked, WorkedCase } from '../../../libs/rules/src/assess/worked.js';
import type { RuleMeta } from '../../../libs/rules/src/rules/rule.js';
import { topics } from '../../../libs/rules/src/rules/rule.js';
import { messageOf } from '../../../libs/rules/src/assess/message.js';
import { readWorked } from '../worked-files.js';
import { escaped } from './worked.js';

/** For each rule: what it asks, whom it binds, what it may cost, its words, its sources, and a case of each thing that it can say. */
export function rulesPage(): string {
  const statuses = new Map<string, number>();
  for (const source of ruleBook.flatMap((rule) => rule.sources))
    statuses.set(source.status, (statuses.get(source.status) ?? 0) + 1);
  return `# The rules

${ruleBook.length} rules in ${topics.length} topics. Made from the rules themselves; each case is one of the rule's own test, as it ran. The screen of a
rule shows all of its cases, and the limits in them. Sources by status: ${[...statuses]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([status, count]) => `${status} ${count}`)
    .join(', ')}. The approved data, local rules and licensed people decide.

${topics.map((topic) => `- [${topic}](#${topic}): ${rulesOf(topic).map(link).join(', ')}`).join('\n')}

${topics
  .map(
    (topic) =>
      `## ${topic}\n\n${rulesOf(topic)
        .map((rule) => section(rule, readWorked(rule.id)))
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

function section(rule: RuleMeta, worked: Worked): string {
  return [
    `### ${rule.id}`,
    `${rule.asks}`,
    `Binds: ${rule.binds}`,
    `Costs where it is not met: ${[...new Set(worked.costs.map(costWords))].sort().join(', ')}.`,
    `What it says:\n\n${Object.entries(rule.messages)
      .map(([id, text]) => `- ${id}: ${escaped(text)}`)
      .join('\n')}`,
    `Sources:\n\n${rule.sources.map((each) => `- ${sourceWords(each)}`).join('\n')}`,
    `Cases:\n\n${casesOf(rule, worked.cases).join('\n')}`,
  ].join('\n\n');
}

function sourceWords({ document, paragraph, edition, status }: SourceRef): string {
  return `${[document, paragraph, edition].filter((each) => each !== '').join(', ')} (${status})`;
}

/** Cases name their things by ids and tell moments in UTC. */
const asTheyAre = { zone: 'UTC', names: {} };

/** The first case of each outcome and message, in the order of the test. */
function casesOf({ id }: RuleMeta, cases: readonly WorkedCase[]): readonly string[] {
  const first = new Map<string, string>();
  for (const { name, outcome, message, data } of cases) {
    const key = `${outcome} ${message}`;
    const said =
      message === null
        ? 'It says nothing.'
        : `${outcome}. ${messageOf({ ruleId: id, messageId: message, data }, asTheyAre)}`;
    if (!first.has(key)) first.set(key, `- ${escaped(name)}: ${escaped(said)}`);
  }
  return [...first.values()];
}

function costWords(cost: Cost): string {
  if (cost.stops === 'capability') return cost.ofUnit ? `${cost.capability} by the unit concerned` : cost.capability;
  if (cost.stops === 'nothing') return `nothing (${cost.kind})`;
  return `the ${cost.stops}`;
}
