import { linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType, FunctionCode } from '../../catalogue/type.js';
import type { InstalledUnit, Opening } from '../../dossier/installation.js';
import { indicatorInView } from './indicator-in-view.js';

const at = '2026-03-02T14:00Z';
const opening = (part: Partial<Opening>): Opening => ({
  id: 'hole',
  place: 'pilot-panel',
  widthIn: null,
  heightIn: null,
  depthIn: null,
  rightOfEyeIn: 0,
  belowEyeIn: 8,
  eyeDistanceIn: 30,
  ...part,
});
const type = (functions: FunctionCode[], view: Partial<NonNullable<EquipmentType['view']>> | null = null) =>
  typeOf({
    id: 't',
    functions,
    view: view && {
      approvedPlaces: [],
      maxHorizontalDeg: null,
      maxOffsetIn: null,
      document: 'Installation manual t',
      ...view,
    },
  });
const nav = unitOf({ id: 'nav1', functions: ['vor-receiver'] });
const cdi = (part: Partial<InstalledUnit> = {}, hole: Partial<Opening> = {}) =>
  dossierOf({
    configuration: {
      openings: [opening(hole)],
      units: [nav, unitOf({ id: 'u', typeId: 't', openingId: 'hole', ...part })],
      links: [linkOf('nav1', 'lateral-deviation', 'u', 'lateral-deviation')],
    },
  });
const indicator = (view: Partial<NonNullable<EquipmentType['view']>> | null = null) =>
  [
    {
      ...type(['lateral-deviation'], view),
      ports: [
        {
          name: 'lateral-deviation',
          signal: 'lateral-deviation',
          direction: 'in',
          standard: 'analog',
          speed: null,
          requiredFor: [],
        },
      ],
    },
  ] satisfies EquipmentType[];
const annunciator = [type(['approach-annunciation'])];

// Angles of AC 23.1311-1C: optimum 15 degrees all round the line of sight, maximum 35 to the side, 40 up, 20 down; the line of
// sight dips 15 degrees. At 30 in: 8.03 in = 14.99, 8.04 in = 15.00, 8.05 in = 15.02 degrees; 21 in = 34.99, 21.02 in = 35.02.
testRule(indicatorInView, [
  {
    name: 'at 15 degrees',
    dossier: cdi({}, { rightOfEyeIn: 8.03 }),
    types: indicator(),
    at,
    expect: 'met',
    message: 'in-view',
    data: { cone: 'optimum' },
  },
  { name: 'on the limit', dossier: cdi({}, { rightOfEyeIn: 8.038 }), types: indicator(), at, expect: 'met' },
  {
    name: 'past 15 degrees',
    dossier: cdi({}, { rightOfEyeIn: 8.06 }),
    types: indicator(),
    at,
    expect: 'not-met',
    message: 'out-of-view',
  },
  {
    name: 'the same to the left',
    dossier: cdi({}, { rightOfEyeIn: -8.06 }),
    types: indicator(),
    at,
    expect: 'not-met',
  },
  // 15 degrees below the line of sight is 30 below the horizontal: 17.32 in at 30 in.
  { name: 'low, on the limit', dossier: cdi({}, { belowEyeIn: 17.32 }), types: indicator(), at, expect: 'met' },
  { name: 'too low', dossier: cdi({}, { belowEyeIn: 17.34 }), types: indicator(), at, expect: 'not-met' },
  {
    name: 'at eye height, 15 degrees above the line of sight',
    dossier: cdi({}, { belowEyeIn: 0 }),
    types: indicator(),
    at,
    expect: 'met',
  },
  { name: 'above eye height', dossier: cdi({}, { belowEyeIn: -0.01 }), types: indicator(), at, expect: 'not-met' },
  {
    name: 'side not measured',
    dossier: cdi({}, { rightOfEyeIn: null }),
    types: indicator(),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'height not measured',
    dossier: cdi({}, { belowEyeIn: null }),
    types: indicator(),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'eye distance not measured',
    dossier: cdi({}, { eyeDistanceIn: null }),
    types: indicator(),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a measure that no cabin has',
    dossier: cdi({}, { rightOfEyeIn: 9000 }),
    types: indicator(),
    at,
    expect: 'cannot-tell',
  },
  { name: 'opening not recorded', dossier: cdi({ openingId: null }), types: indicator(), at, expect: 'cannot-tell' },

  // The manual first.
  {
    name: 'approved place, wherever the angle',
    dossier: cdi({ place: 'pilot-panel' }, { rightOfEyeIn: 25 }),
    types: indicator({ approvedPlaces: ['pilot-panel'] }),
    at,
    expect: 'met',
  },
  {
    name: 'another place, whatever the angle',
    dossier: cdi({ place: 'centre-stack' }),
    types: indicator({ approvedPlaces: ['pilot-panel'] }),
    at,
    expect: 'not-met',
  },
  {
    name: 'place not recorded',
    dossier: cdi(),
    types: indicator({ approvedPlaces: ['pilot-panel'] }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'at the distance of the manual',
    dossier: cdi({ offsetIn: 11 }),
    types: indicator({ maxOffsetIn: 11 }),
    at,
    expect: 'met',
  },
  {
    name: 'past the distance of the manual',
    dossier: cdi({ offsetIn: 11.1 }),
    types: indicator({ maxOffsetIn: 11 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'distance not measured',
    dossier: cdi({ place: 'pilot-panel' }),
    types: indicator({ approvedPlaces: ['pilot-panel'], maxOffsetIn: 11 }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'within the angle of the manual',
    dossier: cdi({}, { rightOfEyeIn: 10 }),
    types: indicator({ maxHorizontalDeg: 20 }),
    at,
    expect: 'met',
  },
  {
    name: 'past the angle of the manual',
    dossier: cdi({}, { rightOfEyeIn: 11 }),
    types: indicator({ maxHorizontalDeg: 20 }),
    at,
    expect: 'not-met',
  },

  // The wider cone for what is no warning.
  {
    name: 'approach annunciator at 35 degrees',
    dossier: cdi({}, { rightOfEyeIn: 21 }),
    types: annunciator,
    at,
    expect: 'met',
    data: { cone: 'maximum' },
  },
  {
    name: 'approach annunciator past 35 degrees',
    dossier: cdi({}, { rightOfEyeIn: 21.02 }),
    types: annunciator,
    at,
    expect: 'not-met',
  },
  {
    name: 'approach annunciator 20 degrees down',
    dossier: cdi({}, { belowEyeIn: 21 }),
    types: annunciator,
    at,
    expect: 'met',
  },
  {
    name: 'approach annunciator past 20 degrees down',
    dossier: cdi({}, { belowEyeIn: 21.02 }),
    types: annunciator,
    at,
    expect: 'not-met',
  },
  {
    name: 'an integrity light is a warning',
    dossier: cdi({}, { rightOfEyeIn: 10 }),
    types: [type(['integrity-annunciation', 'approach-annunciation'])],
    at,
    expect: 'not-met',
    data: { cone: 'optimum' },
  },
  {
    name: 'an indicator joined to no source',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'u', functions: ['lateral-deviation'] })] } }),
    at,
    expect: 'none',
  },
  {
    name: 'a navigator with its own display and no other',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'n', functions: ['gnss', 'lateral-deviation'] })] } }),
    at,
    subject: 'n',
    expect: 'cannot-tell',
  },
  {
    name: 'a navigator with its own display beside a joined indicator',
    dossier: dossierOf({
      configuration: {
        units: [
          unitOf({ id: 'n', functions: ['gnss', 'lateral-deviation'] }),
          unitOf({ id: 'u', functions: ['lateral-deviation'] }),
        ],
        links: [linkOf('n', 'lateral-deviation', 'u', 'lateral-deviation')],
      },
    }),
    at,
    subject: 'n',
    expect: 'none',
  },
]);
