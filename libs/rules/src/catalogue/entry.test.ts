import { describe, expect, it } from 'vitest';
import { limitationOf, typeOf } from '../../testing/builders.js';
import { readEntry, unknownPairFamilies } from './entry.js';
import type { EntryCode, TypeEntry } from './entry.js';
import { entryTexts } from './entry.js';
import { drawsNothing } from './type.js';

const port: TypeEntry['ports'][number] = {
  name: 'LAT OUT',
  signal: 'lateral-deviation',
  direction: 'out',
  standard: 'analog',
  speed: null,
  requiredFor: [],
};
const pair: TypeEntry['pairs'][number] = {
  family: 'fi-6',
  signals: ['lateral-deviation', 'vertical-deviation'],
  software: null,
  document: 'Manual',
  revision: 'B',
};
const limit = limitationOf({ kind: 'no-link', functions: ['portable-display'] });

function entry(part: Partial<TypeEntry> = {}): TypeEntry {
  const { id: _id, ...body } = typeOf({ id: 'nav', functions: ['gnss', 'com'], ...part });
  return body;
}

/** Code and field of everything that is wrong with an entry. */
function wrong(part: Partial<TypeEntry>): readonly (readonly [string, string])[] {
  const read = readEntry(entry(part));
  return read.ok ? [] : read.problems.map(({ code, field }) => [code, field] as const);
}

describe('an entry that may stand', () => {
  it.each<readonly [string, Partial<TypeEntry>]>([
    ['with nothing stated beside what must be', {}],
    ['with a port that one of its functions needs', { ports: [{ ...port, requiredFor: ['gnss'] }] }],
    ['with a bus and its speed', { ports: [{ ...port, standard: 'arinc-429', speed: 12_500 }] }],
    ['with a bus whose speed the manual leaves out', { ports: [{ ...port, standard: 'rs-232' }] }],
    ['with one voltage', { supplyV: { least: 14, most: 14 } }],
    ['with one current of two', { drawA: { at14V: null, at28V: 1.2 } }],
    ['with a current of 0 A: it draws nothing', { drawA: { at14V: 0, at28V: null } }],
    ['with no current stated: it may draw', { drawA: null }],
    ['with one family paired at two softwares', { pairs: [pair, { ...pair, software: '3.1' }] }],
    [
      'with one document for lateral and another for vertical',
      {
        pairs: [
          { ...pair, signals: ['lateral-deviation'] },
          { ...pair, signals: ['vertical-deviation'], document: 'Letter' },
        ],
      },
    ],
    ['with a joint forbidden to a function it does not have itself', { limitations: [limit] }],
    [
      'with options of its own that exclude each other',
      {
        limitations: [limitationOf({ kind: 'not-both', functions: ['gnss'], beyond: ['com'] })],
      },
    ],
    [
      'with an option that excludes one in another unit',
      {
        limitations: [limitationOf({ kind: 'not-both', functions: ['gnss'], beyond: ['dme'], elsewhere: true })],
      },
    ],
    [
      'with a companion at a place',
      {
        limitations: [
          limitationOf({ kind: 'requires', functions: ['gnss'], beyond: ['dme'], places: ['pilot-panel'] }),
        ],
      },
    ],
  ])('%s', (_, part) => {
    expect(wrong(part)).toEqual([]);
  });
});

describe('what is wrong is named at its field', () => {
  const cases: readonly (readonly [EntryCode, string, Partial<TypeEntry>])[] = [
    ['malformed', 'revision', { revision: ' ' }],
    ['malformed', 'functions', { functions: [] }],
    ['malformed', 'authorisations.0.tso', { authorisations: [{ tso: 'TSO-C146', class: null }] }],
    ['malformed', 'family', { family: 'a family' }],
    ['malformed', 'family', { family: 'fi@6' }],
    ['blank', 'authorisations.0.class', { authorisations: [{ tso: 'C146d', class: ' ' }] }],
    ['blank', 'pairs.0.family', { pairs: [{ ...pair, family: '' }] }],
    ['blank', 'pairs.0.software', { pairs: [{ ...pair, software: '' }] }],
    ['repeated', 'functions', { functions: ['gnss', 'gnss'] }],
    [
      'repeated',
      'authorisations.1',
      {
        authorisations: [
          { tso: 'C146d', class: null },
          { tso: 'C146d', class: null },
        ],
      },
    ],
    ['repeated', 'ports.1.name', { ports: [port, { ...port, name: 'lat out', direction: 'in' }] }],
    ['repeated', 'ports.0.requiredFor', { ports: [{ ...port, requiredFor: ['gnss', 'gnss'] }] }],
    [
      'repeated',
      'databases.1.kind',
      {
        databases: [
          { kind: 'terrain', holdsNext: true },
          { kind: 'terrain', holdsNext: false },
        ],
      },
    ],
    [
      'repeated',
      'view.approvedPlaces',
      {
        view: {
          approvedPlaces: ['pilot-panel', 'pilot-panel'],
          maxHorizontalDeg: null,
          maxOffsetIn: null,
          document: 'M',
        },
      },
    ],
    ['repeated', 'pairs.1', { pairs: [pair, { ...pair, signals: [...pair.signals].reverse() }] }],
    ['repeated', 'pairs.0.signals', { pairs: [{ ...pair, signals: ['position', 'position'] }] }],
    ['repeated', 'limitations.1', { limitations: [limit, { ...limit }] }],
    ['function-not-had', 'ports.0.requiredFor', { ports: [{ ...port, requiredFor: ['gnss', 'dme'] }] }],
    [
      'function-not-had',
      'limitations.0.functions',
      {
        limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['altimeter'] })],
      },
    ],
    [
      'function-not-had',
      'limitations.0.functions',
      {
        limitations: [limitationOf({ kind: 'requires', functions: ['dme'], beyond: ['gnss'] })],
      },
    ],
    [
      'function-not-had',
      'limitations.0.beyond',
      {
        limitations: [limitationOf({ kind: 'not-both', functions: ['gnss'], beyond: ['dme'] })],
      },
    ],
    ['missing-for-kind', 'limitations.0.functions', { limitations: [limitationOf({ kind: 'no-link' })] }],
    [
      'missing-for-kind',
      'limitations.0.beyond',
      {
        limitations: [limitationOf({ kind: 'no-chain', functions: ['autopilot'] })],
      },
    ],
    ['not-for-kind', 'limitations.0.beyond', { limitations: [{ ...limit, beyond: ['dme'] }] }],
    ['not-for-kind', 'limitations.0.places', { limitations: [{ ...limit, places: ['remote'] }] }],
    ['not-for-kind', 'limitations.0.elsewhere', { limitations: [{ ...limit, elsewhere: true }] }],
    ['no-signals', 'pairs.0.signals', { pairs: [{ ...pair, signals: [] }] }],
    ['no-current', 'drawA', { drawA: { at14V: null, at28V: null } }],
    ['supply-turned-round', 'supplyV', { supplyV: { least: 14.1, most: 14 } }],
    ['speed-without-bus', 'ports.0.speed', { ports: [{ ...port, speed: 9600 }] }],
  ];
  it.each(cases)('%s at %s', (code, field, part) => {
    expect(wrong(part)).toEqual([[code, field]]);
  });

  it('for every code there is', () => {
    expect(new Set(cases.map(([code]) => code))).toEqual(new Set(Object.keys(entryTexts)));
  });

  it('also beside a field whose form is wrong, and not because of it', () => {
    const ports = [{ ...port, requiredFor: ['dme' as const] }];
    expect(wrong({ revision: '', ports })).toEqual([
      ['malformed', 'revision'],
      ['function-not-had', 'ports.0.requiredFor'],
    ]);
    expect(wrong({ functions: [], ports })).toEqual([['malformed', 'functions']]);
  });

  it('all at once, and for what is no entry at all', () => {
    expect(wrong({ drawA: { at14V: null, at28V: null }, pairs: [{ ...pair, signals: [] }] })).toHaveLength(2);
    expect(wrong({ drawA: { at14V: -0.1, at28V: null } })).toEqual([['malformed', 'drawA.at14V']]);
    expect(readEntry('nothing')).toMatchObject({ ok: false, problems: [{ code: 'malformed', field: '' }] });
    expect(readEntry({ ...entry(), id: 'mine' })).toMatchObject({ ok: false, problems: [{ code: 'malformed' }] });
  });
});

it('a pair with a family that no entry has is found, its own and known ones are not', () => {
  const pairs = ['fi-6', 'nav', 'zz-1'].map((family) => ({ ...pair, family }));
  expect(unknownPairFamilies(entry({ family: 'nav', pairs }), new Set(['fi-6']))).toEqual([
    { field: 'pairs.2.family', family: 'zz-1' },
  ]);
});

it('only a manual that states 0 A says that a unit draws nothing', () => {
  const draw = (drawA: TypeEntry['drawA']) => drawsNothing({ id: 'x', ...entry({ drawA }) });
  expect([draw({ at14V: 0, at28V: null }), draw({ at14V: null, at28V: 0 }), draw({ at14V: 0, at28V: 0 })]).toEqual([
    true,
    true,
    true,
  ]);
  expect([draw(null), draw({ at14V: 0, at28V: 0.1 }), draw({ at14V: null, at28V: null })]).toEqual([
    false,
    false,
    false,
  ]);
});
