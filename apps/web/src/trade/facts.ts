import { codeWords } from '@tallywing/rules';
import type { Names } from '@tallywing/rules';

const nouns: Readonly<Record<string, string>> = {
  units: 'unit',
  equipment: 'required item',
  links: 'joint',
  identities: 'ADS-B Out settings of',
  antennas: 'antenna',
  placards: 'placard',
  openings: 'opening',
  loads: 'database of',
};

/** What the last letters of a field's name say it is measured in. */
const units: Readonly<Record<string, string>> = { V: 'V', A: 'A', In: 'in', Ft: 'ft', Lb: 'lb' };

const slots: Readonly<Record<string, string>> = { this: 'cycle in use', next: 'next cycle' };

/** A missing fact as a person looks for it: 'Unit SR 12, centre stack: approval'. What has no name goes by its short name. */
export function factWords(fact: string, names: Names): string {
  const { part, noun, id, rest } = partsOf(fact, names);
  if (part === 'status' && noun === 'completeness')
    return `Whether the list of ${codeWords(id).toLowerCase()} is complete`;
  if (fact === 'status.records') return 'Entries that may exist and that nobody recorded';
  if (fact === 'configuration.papers') return 'Papers aboard and on file';
  if (noun === 'aircraft') return sentence(`${pathWords([id, ...rest].join('.'))} of the aircraft`);
  const what = nouns[noun];
  if (what === undefined || id === '') return sentence(pathWords(fact));
  const named = noun === 'equipment' ? codeWords(id).toLowerCase() : (names[id] ?? id);
  const of = rest.length === 0 ? '' : `: ${rest.map((each) => slots[each] ?? pathWords(each)).join(', ')}`;
  return sentence(`${what} ${named}${of}`);
}

/** Part of the record, kind of thing, its short name, and what of it. */
export function partsOf(fact: string, names: Names) {
  const [part = '', noun = '', ...below] = fact.split('.');
  const path = below.join('.');
  const known = noun === 'links' ? jointIn(path, names) : (below[0] ?? '');
  const rest = path.slice(known.length + 1);
  return { part, noun, id: known, rest: rest === '' ? [] : rest.split('.') };
}

/** Joints have dots in their short names: the longest known one, else all but the last word of the path. */
function jointIn(path: string, names: Names): string {
  const known = Object.keys(names).filter((id) => path === id || path.startsWith(`${id}.`));
  return known.sort((a, b) => b.length - a.length)[0] ?? path.split('.').slice(0, -1).join('.');
}

/** 'configuration.authority.document' to 'authority › document'. */
export function pathWords(path: string): string {
  return path
    .replace(/^(configuration|status|meters)\./, '')
    .split('.')
    .map((part) =>
      part.replace(/([a-z])(V|A|In|Ft|Lb)$/, (_, before: string, unit: string) => `${before} (${units[unit]})`),
    )
    .map((part) => part.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`))
    .join(' › ');
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
