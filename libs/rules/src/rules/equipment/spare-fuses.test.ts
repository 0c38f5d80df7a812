import { circuitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentState } from '../../dossier/aircraft.js';
import type { Circuit } from '../../dossier/installation.js';
import { spareFuses } from './spare-fuses.js';

const at = '2026-03-02T14:00Z';
const fuses = (...ratings: readonly (number | null)[]) =>
  ratings.map((ratingA, index) => circuitOf({ id: `c${index}`, protector: 'fuse', ratingA }));
const aircraft = (circuits: readonly Circuit[], state: Partial<EquipmentState> | null = {}) =>
  dossierOf({
    configuration: {
      equipment: state === null ? [] : itemsOf(['spare-fuses'], state),
      electrical: {
        busV: 14,
        alternatorA: 60,
        batteryAh: null,
        batteryShare: null,
        loadWatch: null,
        circuits: [...circuits],
      },
    },
  });

// 23.1357(e): one or 50 % of each rating, whichever is more; 91.205(c)(6): a set, or three of each kind.
testRule(spareFuses, [
  {
    name: 'seen aboard: of three half is two, of one and of two it is one',
    dossier: aircraft(fuses(15, 5, 10, 5, 15, 5)),
    at,
    expect: 'met',
    message: 'aboard',
    data: { spares: '2 of 5 A, 1 of 10 A, 1 of 15 A' },
  },
  {
    name: 'of four still two, of five three',
    dossier: aircraft(fuses(5, 5, 5, 5, 7.5, 7.5, 7.5, 7.5, 7.5)),
    at,
    expect: 'met',
    data: { spares: '2 of 5 A, 3 of 7.5 A' },
  },
  { name: 'none aboard', dossier: aircraft(fuses(5), { state: 'absent' }), at, expect: 'not-met', message: 'absent' },
  {
    name: 'recorded as not asked for, although a fuse is',
    dossier: aircraft(fuses(5), { state: 'not-required' }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'another item recorded as not asked for',
    dossier: dossierOf(aircraft(fuses(5)), {
      configuration: {
        equipment: [...itemsOf(['oil-pressure'], { state: 'not-required' }), ...itemsOf(['spare-fuses'])],
      },
    }),
    at,
    expect: 'met',
    message: 'aboard',
  },
  { name: 'seen by nobody', dossier: aircraft(fuses(5), { seen: null }), at, expect: 'cannot-tell' },
  { name: 'nothing said of spares', dossier: aircraft(fuses(5), null), at, expect: 'cannot-tell' },
  {
    name: 'a rating is not recorded',
    dossier: aircraft(fuses(5, null)),
    at,
    expect: 'cannot-tell',
    data: { spares: '1 of 5 A' },
  },
  { name: 'no rating is recorded', dossier: aircraft(fuses(null)), at, expect: 'cannot-tell', data: { spares: null } },
  { name: 'breakers only', dossier: aircraft([circuitOf({ id: 'c', ratingA: 5 })]), at, expect: 'none' },
  { name: 'electrical system not recorded', dossier: dossierOf(), at, expect: 'none' },
]);
