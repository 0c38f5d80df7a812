import { installedNames, ruleBook } from '@tallywing/rules';
import type { Dossier, MessageWords, Names, RuleMeta } from '@tallywing/rules';

export type Values = Readonly<Record<string, string | number | null>>;

const byId: ReadonlyMap<string, RuleMeta> = new Map(ruleBook.map((rule) => [rule.id, rule]));

export function ruleOf(ruleId: string): RuleMeta | undefined {
  return byId.get(ruleId);
}

/** How results of this aircraft are put into words: its own names, the time of its base. */
export function wordsIn({ configuration }: Dossier): MessageWords {
  return { zone: configuration.aircraft.base.zone, names: installedNames(configuration) };
}

/** The same data with names in place of ids, for those who read it without the aircraft's record. */
export function named(data: Values, names: Names): Values {
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, typeof value === 'string' ? (names[value] ?? value) : value]),
  );
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
