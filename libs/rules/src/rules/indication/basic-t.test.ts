import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { InstalledUnit, Opening } from '../../dossier/installation.js';
import { basicT } from './basic-t.js';

const at = '2026-03-02T14:00Z';
type At = readonly [rightOfEyeIn: number | null, belowEyeIn: number | null];
const where = { attitude: [0, 8], airspeed: [-4, 8], altimeter: [4, 8], direction: [0, 12] } as const;
const opening = (id: string, [rightOfEyeIn, belowEyeIn]: At): Opening => ({
  id,
  place: 'pilot-panel',
  widthIn: 3.125,
  heightIn: 3.125,
  depthIn: null,
  rightOfEyeIn,
  belowEyeIn,
  eyeDistanceIn: 30,
});
const panel = (
  part: Partial<Record<keyof typeof where, At | null>> = {},
  more: readonly InstalledUnit[] = [],
  basis: Aircraft['basis'] = { code: 'part-23', amendment: 40 },
  airspeedUnit: string | null = 'airspeed',
) => {
  const all: Readonly<Record<string, At | null>> = { ...where, ...part };
  return dossierOf({
    configuration: {
      aircraft: { basis },
      openings: Object.entries(all).flatMap(([id, at]) => (at === null ? [] : [opening(id, at)])),
      equipment: itemsOf(['airspeed-indicator'], { unitId: airspeedUnit }),
      units: [
        unitOf({ id: 'attitude', functions: ['attitude'], openingId: 'attitude' }),
        unitOf({ id: 'airspeed', functions: ['other'], openingId: 'airspeed' }),
        unitOf({ id: 'altimeter', functions: ['altimeter'], openingId: 'altimeter' }),
        unitOf({ id: 'direction', functions: ['direction'], openingId: 'direction' }),
        ...more,
      ],
    },
  });
};

// 14 CFR 23.1321(d) before amendment 23-64: attitude on top in the middle, airspeed left, altitude right, direction below.
testRule(basicT, [
  { name: 'the basic T', dossier: panel(), at, expect: 'met', message: 'stands' },
  {
    name: 'the basic T, all of it to the right of the eye',
    dossier: panel({ attitude: [10, 8], airspeed: [6, 8], altimeter: [14, 8], direction: [10, 12] }),
    at,
    expect: 'met',
  },
  {
    name: 'the list of equipment begins with another instrument',
    dossier: dossierOf(panel(), {
      configuration: {
        equipment: [
          ...itemsOf(['altimeter'], { unitId: 'altimeter' }),
          ...itemsOf(['airspeed-indicator'], { unitId: 'airspeed' }),
        ],
      },
    }),
    at,
    expect: 'met',
  },
  {
    name: 'airspeed on the right',
    dossier: panel({ airspeed: [8, 8] }),
    at,
    expect: 'not-met',
    message: 'apart',
    data: { apart: 'airspeed' },
  },
  { name: 'altitude on the left', dossier: panel({ altimeter: [-8, 8] }), at, expect: 'not-met' },
  {
    name: 'direction above',
    dossier: panel({ direction: [0, 4] }),
    at,
    expect: 'not-met',
    data: { apart: 'direction' },
  },
  { name: 'direction beside', dossier: panel({ direction: [8, 8] }), at, expect: 'not-met' },
  {
    name: 'two of them changed about',
    dossier: panel({ airspeed: [4, 8], altimeter: [-4, 8] }),
    at,
    expect: 'not-met',
    data: { apart: 'airspeed, altitude' },
  },
  {
    name: 'altitude a little less low than it is to the right',
    dossier: panel({ altimeter: [4, 11.9] }),
    at,
    expect: 'met',
  },
  { name: 'altitude as low as it is to the right', dossier: panel({ altimeter: [4, 12] }), at, expect: 'not-met' },
  {
    name: 'direction a little less to the side than it is below',
    dossier: panel({ direction: [3.9, 12] }),
    at,
    expect: 'met',
  },
  {
    name: 'direction as far to the side as it is below',
    dossier: panel({ direction: [-4, 12] }),
    at,
    expect: 'not-met',
  },
  {
    name: 'a second altimeter elsewhere',
    dossier: panel({}, [unitOf({ id: 'standby', functions: ['altimeter'] })]),
    at,
    expect: 'met',
  },
  {
    name: 'the first misplaced, the second nobody measured',
    dossier: panel({ altimeter: [-8, 8] }, [unitOf({ id: 'standby', functions: ['altimeter'] })]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'not measured how far right', dossier: panel({ altimeter: [null, 8] }), at, expect: 'cannot-tell' },
  { name: 'not measured how low', dossier: panel({ attitude: [0, null] }), at, expect: 'cannot-tell' },
  {
    name: 'attitude not measured how far right',
    dossier: panel({ attitude: [null, 8] }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'altitude not measured how low', dossier: panel({ altimeter: [4, null] }), at, expect: 'cannot-tell' },
  {
    name: 'opening of the attitude instrument not recorded',
    dossier: panel({ attitude: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'opening of one not recorded', dossier: panel({ direction: null }), at, expect: 'cannot-tell' },
  {
    name: 'which unit shows airspeed not recorded',
    dossier: panel({}, [], undefined, null),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'no unit that shows direction',
    dossier: dossierOf({
      configuration: {
        aircraft: { basis: { code: 'part-23', amendment: 40 } },
        units: [unitOf({ id: 'attitude', functions: ['attitude'] })],
      },
    }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'basis not recorded', dossier: panel({}, [], null), at, expect: 'met' },
  { name: 'under CAR 3', dossier: panel({}, [], { code: 'car-3', amendment: null }), at, expect: 'none' },
  { name: 'under part 27', dossier: panel({}, [], { code: 'part-27', amendment: 0 }), at, expect: 'none' },
  ...(
    [
      ['a display that shows altitude too', ['altimeter']],
      ['a display that shows direction too', ['direction']],
      ['a display that shows altitude and direction too', ['altimeter', 'direction']],
    ] as const
  ).map(([name, functions]) => ({
    name,
    dossier: dossierOf({
      configuration: {
        aircraft: { basis: { code: 'part-23', amendment: 40 } },
        units: [unitOf({ id: 'pd', typeId: 'pd' })],
      },
    }),
    types: [typeOf({ id: 'pd', functions: ['attitude', ...functions] })],
    at,
    expect: 'none' as const,
  })),
  {
    name: 'an attitude instrument that is deactivated',
    dossier: dossierOf({
      configuration: {
        aircraft: { basis: { code: 'part-23', amendment: 40 } },
        units: [
          unitOf({
            id: 'attitude',
            functions: ['attitude'],
            deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    at,
    expect: 'none',
  },
]);
