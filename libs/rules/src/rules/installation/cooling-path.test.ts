import { expect, it } from 'vitest';
import { approvalOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { statements } from '../../../testing/rule-case.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { AsBuilt, InstalledUnit } from '../../dossier/installation.js';
import { missingPaths } from '../gaps.js';
import { coolingPath } from './cooling-path.js';

const at = '2026-03-02T14:00Z';
const drawA = { at14V: 2, at28V: null };
const type = (cooling: EquipmentType['cooling'], part: Partial<EquipmentType> = {}) =>
  typeOf({ id: 'u1', functions: ['gnss'], drawA, cooling, ...part });
const fan = type({ by: 'own-fan', clearanceIn: 0.25, document: 'Installation manual u1' });
const outside = type({ by: 'outside-air', clearanceIn: null, document: 'Installation manual u1' });
const built = (part: Partial<AsBuilt> | null, unit: Partial<InstalledUnit> = {}) =>
  dossierOf({
    configuration: {
      units: [
        unitOf({
          id: 'u',
          typeId: 'u1',
          asBuilt: part && { air: null, airwaysClear: null, couldStrike: null, bears: null, lights: null, ...part },
          ...unit,
        }),
      ],
    },
  });

it('air by a scoop names what is to be found out', () => {
  const scoop = { name: '', at, types: [outside], dossier: built({ air: 'ram-air', airwaysClear: true }) };
  const [draft] = statements(coolingPath, { ...scoop, expect: 'cannot-tell' });
  expect(draft && missingPaths(draft.clause)).toEqual(['configuration.units.u.asBuilt.air']);
});

testRule(coolingPath, [
  {
    name: 'own fan, intakes clear, no air led to it',
    dossier: built({ air: 'none', airwaysClear: true }),
    types: [fan],
    at,
    expect: 'met',
    message: 'cool',
  },
  {
    name: 'own fan, intakes covered',
    dossier: built({ air: 'blower', airwaysClear: false }),
    types: [fan],
    at,
    expect: 'not-met',
    message: 'hot',
  },
  {
    name: 'own fan, nobody looked at the intakes',
    dossier: built({ air: 'none' }),
    types: [fan],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'outside air by a blower',
    dossier: built({ air: 'blower', airwaysClear: true }),
    types: [outside],
    at,
    expect: 'met',
  },
  {
    name: 'outside air by a scoop: none on the ground',
    dossier: built({ air: 'ram-air', airwaysClear: true }),
    types: [outside],
    at,
    expect: 'cannot-tell',
    message: 'scoop',
  },
  {
    name: 'outside air by a scoop, nobody looked at the intakes',
    dossier: built({ air: 'ram-air' }),
    types: [outside],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'no outside air',
    dossier: built({ air: 'none', airwaysClear: true }),
    types: [outside],
    at,
    expect: 'not-met',
  },
  {
    name: 'outside air, but the exhaust is covered',
    dossier: built({ air: 'blower', airwaysClear: false }),
    types: [outside],
    at,
    expect: 'not-met',
  },
  {
    name: 'which air is led to it not recorded',
    dossier: built({ airwaysClear: true }),
    types: [outside],
    at,
    expect: 'cannot-tell',
  },
  { name: 'nothing recorded', dossier: built(null), types: [outside], at, expect: 'cannot-tell' },
  {
    name: 'still air with a clearance',
    dossier: built({ airwaysClear: true }),
    types: [type({ by: 'still-air', clearanceIn: 0.5, document: 'Installation manual u1' })],
    at,
    expect: 'met',
  },
  {
    name: 'catalogue silent',
    dossier: built({ air: 'blower', airwaysClear: true }),
    types: [type(null)],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'catalogue silent, air from a scoop: whether it needs any is not known either',
    dossier: built({ air: 'ram-air', airwaysClear: true }),
    types: [type(null)],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'accepted as found',
    dossier: built(null, {
      approval: approvalOf({ basis: 'as-found', acceptedBy: { asOf: '2025-09-01', by: 'R. Tamsin' } }),
    }),
    types: [outside],
    at,
    expect: 'met',
  },
  {
    name: 'still air and nothing to keep clear',
    dossier: built(null),
    types: [type({ by: 'still-air', clearanceIn: null, document: 'Installation manual u1' })],
    at,
    expect: 'none',
  },
  {
    name: 'draws nothing by its manual',
    dossier: built(null),
    types: [type(null, { drawA: { at14V: 0, at28V: 0 } })],
    at,
    expect: 'none',
  },
  {
    name: 'neither cooling nor current stated',
    dossier: built(null),
    types: [type(null, { drawA: null })],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'portable',
    dossier: built(null),
    types: [type(null, { functions: ['portable-display'] })],
    at,
    expect: 'none',
  },
  { name: 'not catalogued', dossier: built(null, { typeId: null, functions: ['com'] }), at, expect: 'none' },
]);
