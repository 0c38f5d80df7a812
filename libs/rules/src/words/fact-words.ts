import { codeWords, lowerFirst, upperFirst } from './codes.js';
import type { Names } from './names.js';

/** One of each list of the record. */
const nouns: Readonly<Record<string, string>> = {
  units: 'unit',
  equipment: 'required item',
  links: 'joint',
  identities: 'ADS-B Out settings of',
  antennas: 'antenna',
  placards: 'placard',
  openings: 'opening',
  loads: 'database of',
  staticSystems: 'static system',
  supplements: 'supplement of',
  papers: 'paper',
  packs: 'documents of',
  records: 'entry',
  recurring: 'recurring item',
  directives: 'directive',
  lifeLimits: 'life limit',
  defects: 'defect',
  decisions: 'decision',
  obligations: 'work owed:',
};

/** What the last letters of a field's name say it is measured in. */
const units: Readonly<Record<string, string>> = { V: 'V', A: 'A', In: 'in', Ft: 'ft', Lb: 'lb' };

/** Fields whose own name does not say within a sentence what is asked. */
const fields: Readonly<Record<string, string>> = {
  aboard: 'whether it is aboard',
  acceptedBy: 'who accepted it as found',
  agency: 'who did it',
  air: 'what moves air to it on the ground',
  at: 'time of day',
  busV: 'bus voltage (V)',
  calibratedUntil: 'day to which it is calibrated',
  changesSince: 'what changed since it was revised',
  cover: 'what approves it',
  decidedBy: 'who decided it',
  deferral: 'how it is put off',
  drawA: 'current that it draws (A)',
  dueAt: 'when it is due next',
  expires: 'day of expiry',
  fitted: 'day of fitting',
  form: 'the form',
  grants: 'what it is approved for',
  inView: 'whether it is in view',
  letterAboard: 'whether the letter is aboard',
  listed: 'whether it stands in the equipment list',
  manufactured: 'day of making',
  marked: 'whether it is marked',
  maxWeightLb: 'greatest weight (lb)',
  meters: 'meter readings',
  nextDue: 'when it is due next',
  noHazardBy: 'who found it no hazard',
  notRequired: 'whether it is required',
  openingId: 'opening in the panel',
  options: 'options switched on',
  outcome: 'whether it was passed',
  papers: 'papers',
  placarded: 'whether it is placarded',
  recorded: 'whether it is entered',
  recordId: 'the entry of it',
  records: 'entries',
  recurs: 'whether it recurs',
  retireBy: 'when to retire it',
  secured: 'whether it is secured',
  serial: 'serial number',
  subjects: 'what it was done to',
  supplyV: 'supply voltage (V)',
  testedToFt: 'altitude tested to (ft)',
  touched: 'what the work touched',
  typeId: 'equipment type',
  unitId: 'which unit it is',
  usedIn: 'conditions that it is used in',
};

const slots: Readonly<Record<string, string>> = { this: 'cycle in use', next: 'next cycle' };

/** A missing fact as a person looks for it: 'Unit SR 12, centre stack: approval'. What has no name goes by its short name. */
export function factWords(fact: string, names: Names): string {
  const { part, noun, id, rest } = partsOf(fact, names);
  if (noun === 'completeness') return `Whether the list of ${codeWords(id).toLowerCase()} is complete`;
  if (part === 'catalogue') return `Equipment type of ${names[noun] ?? noun}: ${fieldWords(rest.at(-1) ?? id)}`;
  if (fact === 'status.records') return 'Entries that may exist and that nobody recorded';
  if (fact === 'configuration.papers') return 'Papers aboard and on file';
  if (noun === 'aircraft') return upperFirst(`${pathWords([id, ...rest].join('.'))} of the aircraft`);
  const what = nouns[noun];
  if (what === undefined || id === '') return upperFirst(pathWords(fact));
  const named = noun === 'equipment' ? codeWords(id).toLowerCase() : (names[id] ?? id);
  const of = rest.length === 0 ? '' : `: ${rest.map((each) => slots[each] ?? pathWords(each)).join(', ')}`;
  return upperFirst(`${what} ${named}${of}`);
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
    .map((step) => (isField(step) ? fieldWords(step) : step))
    .join(' › ');
}

/** What is asked, for a sentence that names the thing already: 'equipment type', 'entries', 'altimeter'. */
export function factName(fact: string): string {
  const { noun, id, rest } = partsOf(fact, {});
  if (noun === 'completeness') return lowerFirst(factWords(fact, {}));
  const field = rest.at(-1);
  // A joint as a whole ends with the name of a port.
  if (field !== undefined && (noun !== 'links' || isField(field))) return fieldWords(field);
  if (id === '' || nouns[noun] === undefined || noun === 'equipment') return fieldWords(id || noun);
  return nouns[noun].replace(/ of$|:$/, '');
}

/** A field of the record, not the short name that somebody gave to a thing. */
function isField(step: string): boolean {
  return /^[a-z]+([A-Z][a-z]*)*$/.test(step);
}

function fieldWords(field: string): string {
  if (Object.hasOwn(fields, field)) return fields[field] ?? field;
  return lowerFirst(codeWords(field.replace(/([a-z])(V|A|In|Ft|Lb)$/, '$1'))) + measure(field);
}

function measure(field: string): string {
  const unit = units[/[a-z](V|A|In|Ft|Lb)$/.exec(field)?.[1] ?? ''];
  return unit === undefined ? '' : ` (${unit})`;
}
