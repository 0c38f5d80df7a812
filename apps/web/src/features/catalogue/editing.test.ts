import { equipmentType, limitationFields, readEntry, type EquipmentType } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { valueAt } from '../../form/tree.js';
import { keepEntryDraft, readEntryDraft } from './draft.js';
import {
  blankEntry,
  choicesAt,
  copyOf,
  entryOf,
  entrySpec,
  entryWith,
  isHidden,
  sections,
  type Entry,
} from './entry.js';
import { hintAt, labelAt, rowWords } from './field-words.js';
import { mergedOn } from './merge.js';
import { problemsOf, refusedFields, toMend, withoutEmpty } from './problems.js';

const type: EquipmentType = {
  id: 'nav@1',
  family: 'nav',
  maker: 'Quillon Works',
  name: 'Navigator',
  partNumber: 'QW-1',
  document: 'Manual',
  revision: 'A',
  functions: ['gnss', 'com'],
  authorisations: [{ tso: 'C146d', class: 'Gamma-3' }],
  bezel: null,
  massLb: 4.4,
  drawA: null,
  supplyV: null,
  cooling: null,
  ports: [
    { name: 'LAT', signal: 'lateral-deviation', direction: 'out', standard: 'rs-232', speed: 9600, requiredFor: [] },
  ],
  databases: [],
  view: null,
  pairs: [],
  limitations: [
    {
      kind: 'requires',
      functions: ['gnss'],
      beyond: ['dme'],
      places: ['pilot-panel'],
      elsewhere: false,
      document: 'Manual',
      paragraph: '2.1',
    },
  ],
};
const entry = entryOf(type);

test('every field of the schema has its place in one section, and only the id is not asked for', () => {
  const asked = sections.flatMap(({ fields }) => fields);
  expect([...asked].sort()).toEqual(
    Object.keys(equipmentType.shape)
      .filter((name) => name !== 'id')
      .sort(),
  );
  expect(entrySpec.fields.map(({ name }) => name).sort()).toEqual([...asked].sort());
});

test('an entry of the catalogue comes into the form and out again as it was', () => {
  expect(readEntry(entry)).toEqual({ ok: true, entry });
  expect(problemsOf(entry)).toEqual([]);
});

test('a blank entry asks for what must be given, but not before one tried to save it', () => {
  const blank = blankEntry();
  const fields = problemsOf(blank).map(({ field }) => field);
  expect(fields).toEqual(['family', 'maker', 'name', 'partNumber', 'document', 'revision', 'functions']);
  expect(problemsOf(blank)[4]).toEqual({ field: 'document', says: 'This is still empty.', wayOut: 'Fill it in.' });
  expect(withoutEmpty(problemsOf(blank), blank)).toEqual([]);
  const wrong = entryWith(blank, 'massLb', 'twelve');
  expect(withoutEmpty(problemsOf(wrong), wrong)).toEqual([
    { field: 'massLb', says: 'This is not a number.', wayOut: '' },
  ]);
});

test('a copy says nothing of which product it is, nor of its document', () => {
  const copy = copyOf(type);
  expect(problemsOf(copy).map(({ field }) => field)).toEqual(['family', 'name', 'partNumber', 'document', 'revision']);
  expect([copy['maker'], copy['ports'], copy['massLb']]).toEqual([type.maker, type.ports, type.massLb]);
});

test('another kind of limitation empties what it does not use, and asks for what it does', () => {
  const noLink = entryWith(entry, 'limitations.0.kind', 'no-link');
  expect(valueAt(noLink, 'limitations.0')).toMatchObject({
    functions: ['gnss'],
    beyond: [],
    places: [],
    elsewhere: false,
  });
  for (const [kind, uses] of Object.entries(limitationFields)) {
    const one = entryWith(entry, 'limitations.0.kind', kind);
    for (const name of ['beyond', 'places', 'elsewhere'] as const)
      expect([kind, name, isHidden(one, `limitations.0.${name}`)]).toEqual([kind, name, !uses[name]]);
    expect(labelAt(one, 'limitations.0.functions')).not.toBe('Functions');
  }
});

test('lists offer what can count, and never hide what is ticked', () => {
  expect(choicesAt(entry, 'ports.0.requiredFor')).toEqual(['gnss', 'com']);
  const odd = entryWith(entry, 'ports.0.requiredFor', ['dme']);
  expect(choicesAt(odd, 'ports.0.requiredFor')).toEqual(['gnss', 'com', 'dme']);
  expect(choicesAt(entry, 'limitations.0.functions')).toEqual(['gnss', 'com']);
  expect(choicesAt(entry, 'limitations.0.beyond')).toBeNull();
  const notBoth = entryWith(entry, 'limitations.0.kind', 'not-both');
  expect(choicesAt(notBoth, 'limitations.0.beyond')).toEqual(['gnss', 'com', 'dme']);
  expect(choicesAt(entryWith(notBoth, 'limitations.0.elsewhere', true), 'limitations.0.beyond')).toBeNull();
  expect(choicesAt(entryWith(entry, 'limitations.0.kind', 'no-link'), 'limitations.0.functions')).toBeNull();
  const paired = entryWith(entry, 'pairs', [{ family: 'x', signals: ['position'] }]);
  expect(choicesAt(paired, 'pairs.0.signals')).toEqual(['lateral-deviation', 'position']);
  expect(choicesAt(entryWith(paired, 'ports', []), 'pairs.0.signals')).toBeNull();
});

test('a folded row says what it is', () => {
  expect(rowWords(entry, 'ports.0')).toBe('Port 1: LAT, Lateral deviation, out');
  expect(rowWords(entry, 'authorisations.0')).toBe('Authorisation 1: C146d, Gamma-3');
  const added = entryWith(entry, 'databases', [{ kind: '', holdsNext: null }]);
  expect(rowWords(added, 'databases.0')).toBe('Database 1: not filled in yet');
});

test('0 A is said to mean that it draws nothing, and may be entered; a current below may not', () => {
  expect([hintAt('drawA.at14V'), hintAt('drawA.at28V')]).toEqual([
    '0 where it draws nothing',
    '0 where it draws nothing',
  ]);
  const field = (at14V: number) =>
    problemsOf(entryWith(entry, 'drawA', { at14V, at28V: null })).map((each) => each.field);
  expect([field(0), field(-0.1)]).toEqual([[], ['drawA.at14V']]);
});

test('a standard without a speed has none', () => {
  expect(isHidden(entry, 'ports.0.speed')).toBe(false);
  const analog = entryWith(entry, 'ports.0.standard', 'analog');
  expect(valueAt(analog, 'ports.0.speed')).toBeNull();
  expect(isHidden(analog, 'ports.0.speed')).toBe(true);
});

test('what is wrong stands at its field, in words of the trade, and is counted by section', () => {
  const wrong = entryWith(entryWith(entry, 'ports.0.requiredFor', ['vor-receiver']), 'drawA', {
    at14V: null,
    at28V: null,
  });
  const problems = problemsOf(wrong);
  expect(problems.find(({ field }) => field === 'ports.0.requiredFor')?.says).toBe(
    'The unit does not do this itself: VOR receiver.',
  );
  expect(toMend(problems)).toEqual([
    { id: 'power', title: 'Power and cooling', count: 1 },
    { id: 'ports', title: 'Ports', count: 1 },
  ]);
  const refusals = [
    { field: 'input.body.family', message: 'Taken.', wayOut: 'Choose another.' },
    { field: 'input.body', message: 'Nothing changed.', wayOut: 'Change it.' },
  ];
  expect(refusedFields({ refusals }).map(({ field }) => field)).toEqual(['family', '']);
  expect(refusedFields({})).toEqual([]);
});

test('two people revise one version: untouched fields are taken over, own ones stay, clashes are named', () => {
  const mine = { ...entry, massLb: 5, revision: 'B' };
  const theirs = { ...entry, revision: 'C', name: 'Navigator two', ports: [] };
  const merged = mergedOn(entry, mine, theirs);
  expect(merged).toEqual({
    entry: { ...theirs, massLb: 5, revision: 'B' },
    taken: ['name', 'ports'],
    kept: ['revision'],
  });
  // Both wrote the same, or only the order of names differs: nothing to tell.
  const turned = Object.fromEntries(Object.entries(theirs).reverse()) as Entry;
  expect(mergedOn(entry, theirs, turned)).toMatchObject({ taken: [], kept: [] });
});

test('the draft comes back as it was left, and not into a form with other fields', () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, text: string) => void kept.set(name, text),
    removeItem: (name: string) => void kept.delete(name),
  };
  const draft = { entry: entryWith(entry, 'massLb', '4.'), expectedId: 'nav@1', key: 'key-of-the-draft' };
  expect(keepEntryDraft(storage, 'revise:nav', draft)).toBe(true);
  expect(readEntryDraft(storage, 'revise:nav')).toEqual({ state: 'kept', draft });
  expect(readEntryDraft(storage, 'new')).toEqual({ state: 'none' });
  const [name = '', text = ''] = [...kept][0] ?? [];
  kept.set(name, text.replace('"version":"1:', '"version":"1:colour,'));
  expect(readEntryDraft(storage, 'revise:nav')).toEqual({ state: 'other-version' });
  keepEntryDraft(storage, 'revise:nav', null);
  expect(readEntryDraft(storage, 'revise:nav')).toEqual({ state: 'none' });
  const full = {
    ...storage,
    setItem: () => {
      throw new Error('no room');
    },
  };
  expect(keepEntryDraft(full, 'new', draft)).toBe(false);
});
