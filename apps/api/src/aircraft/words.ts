import { ruleBook } from '@tallywing/rules';
import type { Dossier, RuleMeta } from '@tallywing/rules';
import { fill } from './refusals.js';

export type Values = Readonly<Record<string, string | number | null>>;

const byId: ReadonlyMap<string, RuleMeta> = new Map(ruleBook.map((rule) => [rule.id, rule]));

export function ruleOf(ruleId: string): RuleMeta | undefined {
  return byId.get(ruleId);
}

/** A result in the words of its rule. Stored results of a rule that is no longer in force say so. */
export function wordsOf(ruleId: string, messageId: string, data: Values): string {
  const message = byId.get(ruleId)?.messages[messageId];
  if (message === undefined) return `${ruleId}: ${messageId} (a rule no longer in force)`;
  const text = fill(message, data);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `ruleId|subject`, as the core writes it. */
export function splitKey(key: string): { readonly ruleId: string; readonly subject: string } {
  const bar = key.indexOf('|');
  return { ruleId: key.slice(0, bar), subject: key.slice(bar + 1) };
}

/** Things by their names, codes as they are: 'gps1:approach-lpv' to 'QN 52 navigator:approach-lpv', a chain to its source on what shows it. */
export function subjectName(dossier: Dossier, subject: string): string {
  const { configuration, status } = dossier;
  // A hold is of the aircraft; its reason says the rest.
  if (status.holds.some((each) => each.id === subject)) return 'aircraft';
  const named = [...configuration.units, ...configuration.staticSystems, ...status.recurring, ...status.lifeLimits];
  const nameOf = (id: string) =>
    named.find((each) => each.id === id)?.name ?? status.directives.find((each) => each.id === id)?.number ?? id;
  return subject
    .split(':')
    .map((part) => part.split('>').map(nameOf).join(' on '))
    .join(':');
}
