import type { Dossier } from '@tallywing/rules';
import { installedNames } from '@tallywing/rules';
import type { Names } from '@tallywing/rules';

type Named = Readonly<Record<string, unknown>> & { readonly id: string };

const antennas: Readonly<Record<Dossier['configuration']['antennas'][number]['kind'], string>> = {
  com: 'COM',
  'vor-loc': 'VOR and localizer',
  'glide-slope': 'glide slope',
  gnss: 'GNSS',
  'gnss-sbas': 'GNSS with SBAS',
  transponder: 'transponder',
  uat: 'UAT',
  marker: 'marker',
  elt: 'ELT',
  combined: 'combined',
};

/** What people call each thing of a dossier, by its id. A record of a test has no name: its words are made of what it says. */
function namesOf({ configuration, status, meters }: Dossier): Names {
  const called = (list: readonly object[], name: (one: never) => unknown): [string, string][] =>
    (list as readonly Named[]).flatMap((each) => {
      const found = name(each as never);
      return typeof found === 'string' && found !== '' ? [[each.id, found] as [string, string]] : [];
    });
  const own = [
    configuration.electrical?.circuits ?? [],
    status.recurring,
    status.lifeLimits,
    meters.definitions,
  ].flatMap((list) => called(list, ({ name }: { name: string }) => name));
  return {
    ...installedNames(configuration),
    ...Object.fromEntries([
      ...called(configuration.openings, ({ place }: { place: string }) => `opening, ${place.replace('-', ' ')}`),
      ...called(configuration.antennas, ({ kind }: { kind: keyof typeof antennas }) => `${antennas[kind]} antenna`),
      ...called(configuration.placards, ({ text }: { text: string }) => `“${text}”`),
      ...called(configuration.supplements, ({ document }: { document: { title: string } }) => document.title),
      ...called(status.directives, ({ number }: { number: string }) => number),
      ...called(status.defects, ({ text }: { text: string }) => `“${text}”`),
      ...called(status.holds, ({ reason }: { reason: string }) => `“${reason}”`),
      ...own,
    ]),
  };
}

/**
 * Names of whatever a text of ids speaks of, before and after an entry: what is taken out has its name from before. Ids that
 * stand in longer ones ('gps1>cdi1') count too.
 */
export function namesWithin(values: unknown, before: Dossier, after: Dossier, more: Names): Names {
  const all: Names = { ...more, ...namesOf(before), ...namesOf(after) };
  const spoken = new Set(JSON.stringify(values).match(/[A-Za-z0-9][A-Za-z0-9._:>/-]*/g) ?? []);
  for (const each of [...spoken]) for (const part of each.split(/[:>]/)) spoken.add(part);
  return Object.fromEntries(Object.entries(all).filter(([id]) => spoken.has(id)));
}
