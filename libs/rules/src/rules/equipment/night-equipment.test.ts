import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf, nightItemsFitted } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentItem, EquipmentState } from '../../dossier/aircraft.js';
import { nightEquipment } from './night-equipment.js';

const at = '2026-03-02T14:00Z';
const aircraft = (equipment: readonly EquipmentState[], certificate: 'standard' | 'experimental' | null = 'standard') =>
  dossierOf({ configuration: { aircraft: { certificate, engine: 'reciprocating' }, equipment } });
const all = itemsOf(nightItemsFitted);
const but = (item: EquipmentItem, part: Partial<EquipmentState>) => [
  ...itemsOf(nightItemsFitted.filter((each) => each !== item)),
  ...itemsOf([item], part),
];

// 14 CFR 91.205(c)
testRule(nightEquipment, [
  { name: 'all fitted', dossier: aircraft(all), at, expect: 'met', message: 'fitted' },
  {
    name: 'for hire without a landing light',
    dossier: aircraft(but('landing-light', { state: 'absent' })),
    at,
    subject: 'for-hire',
    flight: { purpose: 'carriage-for-hire' },
    expect: 'not-met',
    message: 'absent',
    data: { absent: 'landing light' },
  },
  {
    name: 'instruction in a provided aircraft without a landing light',
    dossier: aircraft(but('landing-light', { state: 'absent' })),
    at,
    subject: 'for-hire',
    flight: { purpose: 'training-provided' },
    expect: 'not-met',
  },
  {
    name: 'private without a landing light',
    dossier: aircraft(but('landing-light', { state: 'absent' })),
    at,
    subject: 'for-hire',
    flight: { purpose: 'private' },
    expect: 'not-applicable',
  },
  {
    name: 'rented without a landing light',
    dossier: aircraft(but('landing-light', { state: 'absent' })),
    at,
    subject: 'for-hire',
    flight: { purpose: 'rental' },
    expect: 'not-applicable',
  },
  {
    name: 'for hire, landing light not recorded',
    dossier: aircraft(itemsOf(nightItemsFitted.filter((each) => each !== 'landing-light'))),
    at,
    subject: 'for-hire',
    flight: { purpose: 'aerial-work' },
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'for hire with a landing light', dossier: aircraft(all), at, subject: 'for-hire', expect: 'met' },
  {
    name: 'no anticollision lights, also for an old aircraft',
    dossier: aircraft(but('anticollision-lights', { state: 'absent' })),
    at,
    flight: { purpose: 'private' },
    expect: 'not-met',
  },
  {
    name: 'breakers only: no spare fuses asked',
    dossier: aircraft(but('spare-fuses', { state: 'not-required' })),
    at,
    expect: 'met',
  },
  {
    name: 'recorded as not asked for although it always is',
    dossier: aircraft(but('position-lights', { state: 'not-required' })),
    at,
    expect: 'cannot-tell',
  },
  { name: 'nothing recorded', dossier: aircraft([]), at, expect: 'cannot-tell' },
  {
    name: 'experimental',
    dossier: aircraft([], 'experimental'),
    at,
    expect: 'not-applicable',
    message: 'excepted',
  },
  { name: 'certificate not recorded', dossier: aircraft([], null), at, expect: 'cannot-tell' },
]);
