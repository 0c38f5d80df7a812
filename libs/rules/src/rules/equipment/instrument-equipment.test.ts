import { limitationOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { instrumentItemsFitted, itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentItem, EquipmentState } from '../../dossier/aircraft.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import { instrumentEquipment } from './instrument-equipment.js';

const at = '2026-03-02T14:00Z';
const aircraft = (
  equipment: readonly EquipmentState[],
  certificate: 'standard' | 'light-sport' | null = 'standard',
  units: readonly InstalledUnit[] = [],
) => dossierOf({ configuration: { aircraft: { certificate, engine: 'reciprocating' }, equipment, units } });
const but = (...items: readonly EquipmentItem[]) =>
  itemsOf(instrumentItemsFitted.filter((each) => !items.includes(each)));
const off = { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true };

/** A moving-map display that draws an attitude, which its manual lets replace no instrument. */
const noInstrument = typeOf({
  id: 'md1',
  functions: ['attitude'],
  limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['attitude'] })],
});
const attitude = (unitId: string | null, unit?: InstalledUnit) =>
  aircraft(
    [...but('pitch-and-bank'), ...itemsOf(['pitch-and-bank'], { unitId })],
    'standard',
    [unitOf({ id: 'efd1', typeId: 'md1' }), ...(unit ? [unit] : [])].filter(
      (each, _, all) => all.findLast(({ id }) => id === each.id) === each,
    ),
  );

// 14 CFR 91.205(d)(3) to (9)
testRule(instrumentEquipment, [
  { name: 'all fitted', dossier: aircraft(itemsOf(instrumentItemsFitted)), at, expect: 'met', message: 'fitted' },
  {
    name: 'no clock',
    dossier: aircraft([...but('clock'), ...itemsOf(['clock'], { state: 'absent' })]),
    at,
    expect: 'not-met',
    message: 'absent',
    data: { absent: 'clock' },
  },
  {
    name: 'third attitude system instead of rate of turn',
    dossier: aircraft([
      ...but('rate-of-turn'),
      ...itemsOf(['rate-of-turn'], { state: 'absent' }),
      ...itemsOf(['third-attitude']),
    ]),
    at,
    expect: 'met',
  },
  {
    name: 'neither rate of turn nor third attitude system',
    dossier: aircraft([...but('rate-of-turn'), ...itemsOf(['rate-of-turn', 'third-attitude'], { state: 'absent' })]),
    at,
    expect: 'not-met',
  },
  {
    name: 'no rate of turn, third attitude system not recorded',
    dossier: aircraft([...but('rate-of-turn'), ...itemsOf(['rate-of-turn'], { state: 'absent' })]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'direction gyro fitted, its unit deactivated',
    dossier: aircraft(itemsOf(instrumentItemsFitted), 'standard', [
      unitOf({ id: 'dg', functions: ['direction'], deactivated: off }),
    ]),
    at,
    expect: 'not-met',
  },
  { name: 'alternator not recorded', dossier: aircraft(but('generator')), at, expect: 'cannot-tell' },
  { name: 'nothing recorded', dossier: aircraft([]), at, expect: 'cannot-tell' },
  { name: 'light-sport', dossier: aircraft([], 'light-sport'), at, expect: 'not-applicable', message: 'excepted' },
  {
    name: 'certificate not recorded, all fitted',
    dossier: aircraft(itemsOf(instrumentItemsFitted), null),
    at,
    expect: 'met',
  },
  { name: 'certificate not recorded, nothing recorded', dossier: aircraft([], null), at, expect: 'cannot-tell' },
  {
    name: 'the display that is named as attitude instrument may stand in for none',
    dossier: attitude('efd1'),
    types: [noInstrument],
    at,
    expect: 'not-met',
    data: { absent: 'pitch and bank indicator' },
  },
  {
    name: 'such a display, and nobody recorded which unit the item is',
    dossier: attitude(null),
    types: [noInstrument],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'such a display beside the instrument that is named',
    dossier: attitude('gyro', unitOf({ id: 'gyro', functions: ['attitude'] })),
    types: [noInstrument],
    at,
    expect: 'met',
  },
  {
    name: 'a portable device named as attitude instrument',
    dossier: attitude('efd1', unitOf({ id: 'efd1', functions: ['attitude', 'portable-display'] })),
    types: [noInstrument],
    at,
    expect: 'not-met',
  },
  {
    name: 'of the unit that is named nothing is known',
    dossier: attitude('x', unitOf({ id: 'x' })),
    types: [noInstrument],
    at,
    expect: 'cannot-tell',
  },
]);
