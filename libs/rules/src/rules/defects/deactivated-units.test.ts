import { unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { deactivatedUnits } from './deactivated-units.js';

const of = (placarded: boolean | null, recorded: boolean | null) =>
  dossierOf({
    configuration: {
      units: [
        unitOf({
          id: 'xp1',
          functions: ['transponder'],
          deactivated: { since: { date: '2026-03-01', at: null }, placarded, recorded },
        }),
      ],
    },
  });
const at = '2026-03-16T16:00Z';

// 14 CFR 91.213(d)(3)(ii): deactivated and placarded "Inoperative", with the entry of 43.9; 91.405(d): the placard is there.
testRule(deactivatedUnits, [
  {
    name: 'placarded and entered',
    dossier: of(true, true),
    at,
    expect: 'met',
    message: 'secured',
    data: { since: '2026-03-01' },
  },
  { name: 'no placard', dossier: of(false, true), at, expect: 'not-met', message: 'bare' },
  { name: 'no entry', dossier: of(true, false), at, expect: 'not-met' },
  { name: 'neither', dossier: of(false, false), at, expect: 'not-met' },
  { name: 'no placard, entry not recorded', dossier: of(false, null), at, expect: 'not-met' },
  {
    name: 'placard not recorded',
    dossier: of(null, true),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'whether it is placarded' },
  },
  { name: 'entry not recorded', dossier: of(true, null), at, expect: 'cannot-tell' },
  {
    name: 'a unit that works',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'xp1', functions: ['transponder'] })] } }),
    at,
    expect: 'none',
  },
]);
