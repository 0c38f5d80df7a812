import { apply, blankDossier, parseChange, type Catalogue, type Dossier } from '@tallywing/rules';
import { describe, expect, it } from 'vitest';
import { acceptanceOf, lackingIn, listsStated, supposed, tiedTo, tried } from './found.js';

const now = '2026-11-25T14:00Z';
const catalogue = {
  version: 'c',
  types: { 'sr12@1': { id: 'sr12@1', maker: 'Marrowby', name: 'SR 12', functions: ['com'] } },
} as unknown as Catalogue;
const blank = blankDossier('a');

function withUnit(): Dossier {
  const added = parseChange({
    kind: 'aircraft.add',
    version: 1,
    aircraft: { ...blank.configuration.aircraft, registration: 'TW-07Q', make: 'Corvane', model: 'Four' },
  });
  if (!added.ok) throw new Error('the aircraft was refused');
  const unit = {
    id: 'com1',
    name: 'Radio',
    typeId: null,
    functions: ['com'],
    serial: null,
    approval: null,
    openingId: null,
    place: null,
    software: null,
    offsetIn: null,
    options: [],
    manufactured: null,
    fitted: null,
    deactivated: null,
    massLb: null,
    armIn: null,
    asBuilt: null,
    notes: null,
  };
  const dossier = apply(blank, added.change);
  return { ...dossier, configuration: { ...dossier.configuration, units: [unit] } } as unknown as Dossier;
}

const witness = { name: ' Wenna Tarrant ', certificate: 'TW-M-0417', date: '2026-11-20' };
const acceptance = { ...witness, ticked: ['com1'], source: 'Seen in place; entry of 1998, book 2 page 14' };

describe('accepting as found', () => {
  const dossier = withUnit();

  it('records name, certificate, day and what was looked at', () => {
    const attempt = tried(acceptanceOf(acceptance, dossier), dossier, catalogue, now);
    if (!attempt.ok) throw new Error(attempt.says);
    const by = { asOf: '2026-11-20', by: 'Wenna Tarrant, certificate TW-M-0417' };
    expect(attempt.after.configuration.units[0]?.approval).toMatchObject({
      basis: 'as-found',
      document: { title: 'Seen in place; entry of 1998, book 2 page 14' },
      acceptedBy: by,
    });
    expect(attempt.input).toMatchObject({ adopt: { units: ['com1'], links: [], by, approval: { basis: 'AS_FOUND' } } });
  });

  it.each([
    ['name', 'the name'],
    ['certificate', 'the certificate number'],
    ['date', 'the day'],
    ['source', 'what was looked at'],
  ])('is not recorded without the %s', (field, lacks) => {
    expect(lackingIn(acceptance)).toEqual([]);
    expect(lackingIn({ ...acceptance, [field]: '' })).toEqual([lacks]);
    // It can be tried, with words in its place.
    const attempt = tried(
      acceptanceOf(supposed({ ...acceptance, [field]: '' }, '2026-11-25'), dossier),
      dossier,
      catalogue,
      now,
    );
    expect(attempt.ok).toBe(true);
  });

  it('is refused for a day to come, with the way out', () => {
    const attempt = tried(acceptanceOf({ ...acceptance, date: '2026-12-24' }, dossier), dossier, catalogue, now);
    expect(attempt).toMatchObject({ ok: false, says: expect.stringContaining('has not come yet') });
  });
});

it('states lists to be complete by a named person', () => {
  const dossier = withUnit();
  expect(lackingIn({ ...witness, ticked: [] })).toEqual(['tick what it is about']);
  const attempt = tried(listsStated({ ...witness, ticked: ['directives', 'life-limits'] }), dossier, catalogue, now);
  if (!attempt.ok) throw new Error(attempt.says);
  expect(attempt.after.status.completeness.map(({ list }) => list)).toEqual(['directives', 'life-limits']);
  expect(attempt.input).toMatchObject({
    completenessState: { lists: [{ list: 'DIRECTIVES' }, { list: 'LIFE_LIMITS' }] },
  });
});

it('ties an uncatalogued unit to a type, from which it then has its functions', () => {
  const dossier = withUnit();
  const attempt = tried(tiedTo('com1', 'sr12@1', dossier, catalogue), dossier, catalogue, now);
  if (!attempt.ok) throw new Error(attempt.says);
  expect(attempt.after.configuration.units[0]).toMatchObject({ typeId: 'sr12@1', functions: [], name: 'Radio' });
  expect(tried(tiedTo('com1', 'gone@1', dossier, catalogue), dossier, catalogue, now).ok).toBe(false);
});
