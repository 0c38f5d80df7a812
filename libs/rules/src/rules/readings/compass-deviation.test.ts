import { mechanic, readingsOf, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentState } from '../../dossier/aircraft.js';
import type { CompassReadings } from '../../dossier/readings.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { compassDeviation } from './compass-deviation.js';

type Basis = Dossier['configuration']['aircraft']['basis'];
const swing = (offDeg: number, part: Partial<CompassReadings> = {}, every = 30): CompassReadings => ({
  points: Array.from({ length: 360 / every }, (_, index) => ({
    headingDeg: index * every,
    compassDeg: (index * every + (index === 3 ? offDeg : 0)) % 360,
  })),
  enginesRunning: true,
  radiosStated: true,
  electricLoadsPlacarded: false,
  ...part,
});
const of = (
  compass: CompassReadings | null,
  basis: Basis,
  kind: 'airplane' | 'helicopter' = 'airplane',
  part: Partial<RecordHead> = {},
  equipment: readonly EquipmentState[] = [],
) =>
  dossierOf(
    { configuration: { aircraft: { kind, basis: basis as never }, equipment } },
    {
      status: {
        records: [
          recordOf({
            kind: 'compass-swing',
            on: '2025-02-10',
            agency: mechanic,
            readings: compass === null ? null : readingsOf({ compass }),
            ...part,
          }),
        ],
      },
    },
  );
const car3 = { code: 'car-3', amendment: null } as const;
const at = '2025-06-01T12:00Z';

// Old 23.1327: 10 degrees on any heading. 23.1547: steps of 30 degrees; 27.1547: 45.
testRule(compassDeviation, [
  { name: '10 degrees', dossier: of(swing(10), car3), at, expect: 'met', message: 'within' },
  {
    name: '11 degrees',
    dossier: of(swing(11), car3),
    at,
    expect: 'not-met',
    message: 'outside',
    data: { what: 'deviation', at: 90, value: 11, limit: 10 },
  },
  // 23.1327(b): more from electric loads, where a stabilized indicator is fitted and the placard of 23.1547(e) names them.
  {
    name: '40 degrees from loads that a placard names, stabilized indicator fitted',
    dossier: of(swing(40, { electricLoadsPlacarded: true }), car3, 'airplane', {}, itemsOf(['direction-gyro'])),
    at,
    expect: 'met',
  },
  {
    name: '40 degrees from loads that a placard names, stabilized indicator not recorded',
    dossier: of(swing(40, { electricLoadsPlacarded: true }), car3),
    at,
    expect: 'cannot-tell',
  },
  {
    name: '40 degrees from loads that a placard names, no stabilized indicator',
    dossier: of(swing(40, { electricLoadsPlacarded: true }), car3, 'airplane', {}, [
      ...itemsOf(['direction-gyro'], { state: 'absent' }),
    ]),
    at,
    expect: 'not-met',
    data: { what: 'stabilized-direction-indicator' },
  },
  { name: 'steps of 45 degrees, airplane', dossier: of(swing(0, {}, 45), car3), at, expect: 'not-met' },
  {
    name: 'steps of 45 degrees, helicopter',
    dossier: of(swing(0, {}, 45), { code: 'part-27', amendment: null }, 'helicopter'),
    at,
    expect: 'met',
  },
  {
    name: 'engines running or not: not recorded',
    dossier: of(swing(0, { enginesRunning: null }), car3),
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
  },
  {
    name: 'part 23 as of amendment 63',
    dossier: of(swing(11), { code: 'part-23', amendment: 63 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'part 23 as of amendment 64: no figure',
    dossier: of(swing(11), { code: 'part-23', amendment: 64 }),
    at,
    expect: 'not-applicable',
    message: 'none',
  },
  {
    name: 'part 23, amendment not recorded',
    dossier: of(swing(11), { code: 'part-23', amendment: null }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'certificated to a consensus standard: no figure',
    dossier: of(swing(11), { code: 'consensus', amendment: null }),
    at,
    expect: 'not-applicable',
  },
  { name: 'basis not recorded', dossier: of(swing(11), null), at, expect: 'cannot-tell' },
  { name: 'swing without readings', dossier: of(null, car3), at, expect: 'not-applicable' },
  {
    name: 'a swing entered as failed, without readings',
    dossier: of(null, car3, 'airplane', { outcome: 'failed' }),
    at,
    expect: 'not-met',
    message: 'failed',
  },
]);
