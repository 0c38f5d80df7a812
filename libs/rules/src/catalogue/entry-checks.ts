import type { EntryCode, EntryProblem, TypeEntry } from './entry.js';
import type { FunctionCode, Limitation, Port } from './type.js';

/** What the fields of an entry say of each other. Each check names the field at which a person would mend it. */
export function crossProblems(entry: TypeEntry): readonly EntryProblem[] {
  return [
    ...blanks(entry),
    ...repetitions(entry),
    ...portProblems(entry),
    ...entry.pairs.flatMap((pair, at) =>
      pair.signals.length === 0 ? [problem('no-signals', `pairs.${at}.signals`)] : [],
    ),
    ...entry.limitations.flatMap((each, at) => limitationProblems(each, `limitations.${at}`, entry.functions)),
    ...(entry.drawA !== null && entry.drawA.at14V === null && entry.drawA.at28V === null
      ? [problem('no-current', 'drawA')]
      : []),
    ...(entry.supplyV !== null && entry.supplyV.least > entry.supplyV.most
      ? [problem('supply-turned-round', 'supplyV', { least: entry.supplyV.least, most: entry.supplyV.most })]
      : []),
  ];
}

function problem(code: EntryCode, field: string, data: EntryProblem['data'] = {}): EntryProblem {
  return { code, field, data };
}

/** Text that the schema takes although nothing stands in it; what the manual does not say is null. */
function blanks(entry: TypeEntry): readonly EntryProblem[] {
  const texts = [
    ...entry.authorisations.map((each, at) => [`authorisations.${at}.class`, each.class] as const),
    ...entry.pairs.flatMap((each, at) => [
      [`pairs.${at}.family`, each.family] as const,
      [`pairs.${at}.software`, each.software] as const,
    ]),
  ];
  return texts.flatMap(([field, text]) => (text?.trim() === '' ? [problem('blank', field)] : []));
}

/** A second row that says the same is a slip: of two ports with one name nobody could tell which is joined. */
function repetitions(entry: TypeEntry): readonly EntryProblem[] {
  const codes = (field: string, values: readonly string[]) => repeated(values, () => field);
  return [
    ...codes('functions', entry.functions),
    ...repeated(
      entry.authorisations.map((each) => `${each.tso} ${each.class ?? ''}`),
      (at) => `authorisations.${at}`,
    ),
    ...repeated(
      entry.ports.map((each) => each.name.toLowerCase()),
      (at) => `ports.${at}.name`,
    ),
    ...entry.ports.flatMap((each, at) => codes(`ports.${at}.requiredFor`, each.requiredFor)),
    ...repeated(
      entry.databases.map((each) => each.kind),
      (at) => `databases.${at}.kind`,
    ),
    ...codes('view.approvedPlaces', entry.view?.approvedPlaces ?? []),
    ...repeated(entry.pairs.map(sameWords), (at) => `pairs.${at}`),
    ...entry.pairs.flatMap((each, at) => codes(`pairs.${at}.signals`, each.signals)),
    ...repeated(entry.limitations.map(sameWords), (at) => `limitations.${at}`),
    ...entry.limitations.flatMap((each, at) =>
      (['functions', 'beyond', 'places'] as const).flatMap((name) => codes(`limitations.${at}.${name}`, each[name])),
    ),
  ];
}

function repeated(keys: readonly string[], field: (at: number) => string): readonly EntryProblem[] {
  return keys.flatMap((key, at) => {
    const first = keys.indexOf(key);
    return first < at ? [problem('repeated', field(at), { first: first + 1 })] : [];
  });
}

/** Lists of codes have no order of their own. */
function sameWords(row: Readonly<Record<string, unknown>>): string {
  return JSON.stringify(
    Object.entries(row)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, value]) => [name, Array.isArray(value) ? [...(value as string[])].sort() : value]),
  );
}

/** Standards whose lines have a speed. */
export const withSpeed: readonly Port['standard'][] = ['arinc-429', 'rs-232', 'rs-422'];

function portProblems({ ports, functions }: TypeEntry): readonly EntryProblem[] {
  return ports.flatMap((port, at) => [
    ...notHad(port.requiredFor, functions, `ports.${at}.requiredFor`),
    ...(port.speed !== null && !withSpeed.includes(port.standard)
      ? [problem('speed-without-bus', `ports.${at}.speed`)]
      : []),
  ]);
}

/**
 * Which fields a limitation uses by its kind, as the rules read them; the others stay empty. `own`: its functions are those of the
 * unit itself. `beyond` is then needed, `places` and `elsewhere` may be given.
 */
export const limitationFields: Readonly<
  Record<
    Limitation['kind'],
    { readonly own: boolean; readonly beyond: boolean; readonly places: boolean; readonly elsewhere: boolean }
  >
> = {
  'no-link': { own: false, beyond: false, places: false, elsewhere: false },
  'no-chain': { own: false, beyond: true, places: false, elsewhere: false },
  'not-both': { own: true, beyond: true, places: false, elsewhere: true },
  'not-a-substitute': { own: true, beyond: false, places: false, elsewhere: false },
  requires: { own: true, beyond: true, places: true, elsewhere: false },
};

function limitationProblems(each: Limitation, path: string, had: readonly FunctionCode[]): readonly EntryProblem[] {
  const { own, beyond, places, elsewhere } = limitationFields[each.kind];
  const offHere = each.kind === 'not-both' && !each.elsewhere;
  return [
    ...(each.functions.length === 0 ? [problem('missing-for-kind', `${path}.functions`)] : []),
    ...(own ? notHad(each.functions, had, `${path}.functions`) : []),
    ...(beyond && each.beyond.length === 0 ? [problem('missing-for-kind', `${path}.beyond`)] : []),
    ...(!beyond && each.beyond.length > 0 ? [problem('not-for-kind', `${path}.beyond`)] : []),
    ...(offHere ? notHad(each.beyond, had, `${path}.beyond`) : []),
    ...(!places && each.places.length > 0 ? [problem('not-for-kind', `${path}.places`)] : []),
    ...(each.elsewhere && !elsewhere ? [problem('not-for-kind', `${path}.elsewhere`)] : []),
  ];
}

/** One problem a field, naming what is missing: a port or an option of a function that the unit lacks binds nothing. */
function notHad(named: readonly FunctionCode[], had: readonly FunctionCode[], field: string): readonly EntryProblem[] {
  const missing = named.filter((each) => !had.includes(each));
  return missing.length === 0 ? [] : [problem('function-not-had', field, { function: missing.join(', ') })];
}
