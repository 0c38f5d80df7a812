import { codeWords } from '@tallywing/rules';
import { valueAt } from '../../form/tree.js';
import type { Entry } from './entry.js';

/** Labels of the entry's fields; rows are counted, and what a limitation's lists mean depends on its kind. */
const labels: Readonly<Record<string, string>> = {
  family: 'Short name',
  document: 'Installation manual',
  revision: 'Revision of the manual',
  functions: 'What the unit does',
  authorisations: 'TSO authorisations',
  'authorisations.tso': 'TSO number',
  'authorisations.class': 'Class marked on the unit',
  bezel: 'The part that passes the opening in the panel',
  'bezel.depthIn': 'Depth behind the panel, with connectors',
  drawA: 'Current it draws',
  'drawA.at14V': 'At 14 V',
  'drawA.at28V': 'At 28 V',
  supplyV: 'Supply that its manual allows',
  'supplyV.least': 'Least, V',
  'supplyV.most': 'Most, V',
  'cooling.by': 'Cooled by',
  'cooling.clearanceIn': 'Kept clear around it',
  'cooling.document': 'Document',
  ports: 'Ports that the manual names',
  'ports.requiredFor': 'Must be joined for',
  'ports.speed': 'Speed, bits a second',
  databases: 'Databases that it holds',
  'databases.holdsNext': 'Holds the next cycle beside this one',
  view: 'Where the pilot must see it',
  'view.approvedPlaces': 'Approved places',
  'view.maxHorizontalDeg': 'Most to the side',
  'view.maxOffsetIn': 'Most from the centre of view',
  pairs: 'Pairs',
  'pairs.family': 'Short name of the other product',
  'pairs.software': 'Only at software',
  limitations: 'Limitations of the manual',
  'limitations.functions': 'Functions',
  'limitations.places': 'Where that unit sits; none ticked: anywhere',
  'limitations.elsewhere': 'Meant of other units',
};

const rows: Readonly<Record<string, string>> = {
  authorisations: 'Authorisation',
  ports: 'Port',
  databases: 'Database',
  pairs: 'Pair',
  limitations: 'Limitation',
};

const byKind: Readonly<Record<string, { readonly functions: string; readonly beyond?: string }>> = {
  'no-link': { functions: 'Never joined to a unit that does' },
  'no-chain': { functions: 'Joined to a unit that does', beyond: 'Which must not be joined on to one that does' },
  'not-both': { functions: 'While this is switched on', beyond: 'This must be off' },
  'not-a-substitute': { functions: 'Replaces no required instrument for' },
  requires: { functions: 'Gives this', beyond: 'Only joined to a unit that does' },
};

const hints: Readonly<Record<string, string>> = {
  family:
    'Stays the same over all versions of the product; pairs in other entries name it so. Letters, digits and . _ -',
  'authorisations.tso': 'As C146d, without the letters TSO',
  'drawA.at14V': '0 where it draws nothing',
  'drawA.at28V': '0 where it draws nothing',
};

export function labelAt(entry: Entry, path: string): string | null {
  const place = placeOf(path);
  const row = /^(\w+)\.(\d+)$/.exec(path);
  if (row) return `${rows[row[1] ?? ''] ?? place} ${Number(row[2]) + 1}`;
  const limit = /^(limitations\.\d+)\.(functions|beyond)$/.exec(path);
  if (limit) {
    const words = byKind[String(valueAt(entry, `${limit[1]}.kind`))];
    return words?.[limit[2] as 'functions' | 'beyond'] ?? labels[place] ?? null;
  }
  return labels[place] ?? null;
}

/** A row in one line, under which it is folded. */
export function rowWords(entry: Entry, path: string): string | null {
  const row = valueAt(entry, path) as Readonly<Record<string, string | readonly string[] | boolean | null>> | undefined;
  if (row === undefined) return null;
  const text = (name: string) => (typeof row[name] === 'string' ? row[name] : '');
  const code = (name: string) => (text(name) === '' ? '' : codeWords(text(name)));
  const said: Readonly<Record<string, readonly string[]>> = {
    authorisations: [text('tso'), text('class')],
    ports: [text('name'), code('signal'), code('direction').toLowerCase()],
    databases: [code('kind')],
    pairs: [text('family'), ((row['signals'] ?? []) as readonly string[]).map(codeWords).join(', ')],
    limitations: [code('kind'), text('paragraph')],
  };
  const parts = (said[path.split('.')[0] ?? ''] ?? []).filter((part) => part !== '');
  return [labelAt(entry, path), ...(parts.length === 0 ? ['not filled in yet'] : parts)].join(', ').replace(', ', ': ');
}

export function hintAt(path: string): string | null {
  return hints[placeOf(path)] ?? null;
}

function placeOf(path: string): string {
  return path.replace(/\.\d+(?=\.|$)/g, '');
}
