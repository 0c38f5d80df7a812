import { unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { AsBuilt, InstalledUnit } from '../../dossier/installation.js';
import { annunciatorColours } from './annunciator-colours.js';

const at = '2026-03-02T14:00Z';
type Light = NonNullable<AsBuilt['lights']>[number];
const part23 = (amendment: number | null) => ({ code: 'part-23' as const, amendment });
const part27 = (amendment: number | null) => ({ code: 'part-27' as const, amendment });
const aircraft = (
  lights: readonly Light[] | null,
  basis: Aircraft['basis'] = part23(45),
  unit: Partial<InstalledUnit> = {},
) =>
  dossierOf({
    configuration: {
      aircraft: { basis },
      units: [
        unitOf({
          id: 'ann1',
          functions: ['integrity-annunciation'],
          asBuilt: { air: null, airwaysClear: null, couldStrike: null, bears: null, lights: lights && [...lights] },
          ...unit,
        }),
      ],
    },
  });
const red: Light = { use: 'warning', colour: 'red' };
const one = (use: Light['use'], colour: Light['colour']) => aircraft([red, { use, colour }]);

// 14 CFR 27.1322 since amendment 27-11 (41 FR 55470, 20 Dec 1976); 14 CFR 23.1322 as it stood from amendment 23-17 (41 FR 55465, 20 Dec 1976) to 23-63.
testRule(annunciatorColours, [
  { name: 'a warning in red', dossier: aircraft([red]), at, expect: 'met', message: 'kept' },
  { name: 'a caution in amber', dossier: one('caution', 'amber'), at, expect: 'met' },
  { name: 'safe operation in green', dossier: one('safe-operation', 'green'), at, expect: 'met' },
  { name: 'the rest in white', dossier: one('other', 'white'), at, expect: 'met' },
  { name: 'the rest in blue', dossier: one('other', 'blue'), at, expect: 'met' },
  {
    name: 'a warning in amber',
    dossier: one('warning', 'amber'),
    at,
    expect: 'not-met',
    message: 'wrong',
    data: { light: 'warning amber' },
  },
  { name: 'a caution in red', dossier: one('caution', 'red'), at, expect: 'not-met' },
  { name: 'safe operation in blue', dossier: one('safe-operation', 'blue'), at, expect: 'not-met' },
  { name: 'the rest in green', dossier: one('other', 'green'), at, expect: 'not-met' },
  { name: 'the rest in amber', dossier: one('other', 'amber'), at, expect: 'not-met' },
  { name: 'lights not recorded', dossier: aircraft(null), at, expect: 'cannot-tell', message: 'unclear' },
  { name: 'an annunciator said to have no light', dossier: aircraft([]), at, expect: 'cannot-tell' },
  { name: 'amendment 17', dossier: aircraft([red], part23(17)), at, expect: 'met' },
  {
    name: 'amendment 16: nothing of the kind',
    dossier: aircraft([{ use: 'warning', colour: 'green' }], part23(16)),
    at,
    expect: 'none',
  },
  { name: 'amendment 63', dossier: aircraft([red], part23(63)), at, expect: 'met' },
  { name: 'amendment 64: other words', dossier: aircraft([red], part23(64)), at, expect: 'cannot-tell' },
  { name: 'amendment not recorded', dossier: aircraft([red], part23(null)), at, expect: 'cannot-tell' },
  { name: 'basis not recorded', dossier: aircraft([red], null), at, expect: 'cannot-tell' },
  {
    name: 'CAR 3 has none of it',
    dossier: aircraft([{ use: 'warning', colour: 'blue' }], { code: 'car-3', amendment: null }),
    at,
    expect: 'none',
  },
  { name: 'rotorcraft, amendment 27-11', dossier: aircraft([red], part27(11)), at, expect: 'met' },
  {
    name: 'rotorcraft, amendment 27-11, a warning in amber',
    dossier: aircraft([{ use: 'warning', colour: 'amber' }], part27(11)),
    at,
    expect: 'not-met',
  },
  {
    name: 'rotorcraft, amendment 27-10: nothing of the kind',
    dossier: aircraft([{ use: 'warning', colour: 'amber' }], part27(10)),
    at,
    expect: 'none',
  },
  {
    name: 'rotorcraft, amendment 27-64: no other words',
    dossier: aircraft([{ use: 'caution', colour: 'red' }], part27(64)),
    at,
    expect: 'not-met',
  },
  {
    name: 'rotorcraft, amendment not recorded',
    dossier: aircraft([red], part27(null)),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a screen without recorded lights',
    dossier: aircraft(null, part23(45), { functions: ['gnss', 'integrity-annunciation'] }),
    at,
    expect: 'none',
  },
  {
    name: 'a unit of which nothing is known',
    dossier: aircraft(null, part23(45), { functions: [] }),
    at,
    expect: 'none',
  },
  {
    name: 'a radio with a light of its own',
    dossier: aircraft([{ use: 'caution', colour: 'green' }], part23(45), { functions: ['com'] }),
    at,
    expect: 'not-met',
  },
  {
    name: 'deactivated',
    dossier: aircraft([red], part23(45), {
      deactivated: { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true },
    }),
    at,
    expect: 'none',
  },
]);
