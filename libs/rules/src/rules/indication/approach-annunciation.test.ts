import { approvalOf, limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf, jointsComplete } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import { approachAnnunciation } from './approach-annunciation.js';

const at = '2026-03-02T14:00Z';
const navigator = typeOf({
  id: 'nx',
  functions: ['gnss', 'approach-annunciation'],
  view: {
    approvedPlaces: ['centre-stack'],
    maxHorizontalDeg: null,
    maxOffsetIn: null,
    document: 'Installation manual nx',
  },
  ports: [
    { name: 'APPR', signal: 'approach-status', direction: 'out', standard: 'discrete', speed: null, requiredFor: [] },
    { name: 'FLAG', signal: 'integrity-flag', direction: 'out', standard: 'discrete', speed: null, requiredFor: [] },
  ],
});
const silent = typeOf({ ...navigator, functions: ['gnss'] });
/** It says so within its data. */
const talking = typeOf({
  ...navigator,
  ports: [{ name: 'BUS', signal: 'data', direction: 'out', standard: 'arinc-429', speed: 12_500, requiredFor: [] }],
});
const forbidden = typeOf({
  ...navigator,
  limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['approach-annunciation'] })],
});
const lamp = typeOf({
  id: 'lx',
  functions: ['approach-annunciation'],
  view: { approvedPlaces: ['pilot-panel'], maxHorizontalDeg: null, maxOffsetIn: null, document: 'Manual lx' },
});
const light = (part: Partial<InstalledUnit> = {}) =>
  unitOf({ id: 'ann1', typeId: 'lx', place: 'pilot-panel', ...part });
/** Joints as they stand, and nobody said that they are all. */
const some = (own: Partial<InstalledUnit>, annunciator?: InstalledUnit, port = 'APPR') =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', typeId: 'nx', ...own }), ...(annunciator ? [annunciator] : [])],
      links: annunciator ? [linkOf('gps1', port, 'ann1', port === 'APPR' ? 'approach-status' : 'integrity-flag')] : [],
    },
  });
const panel = (...given: Parameters<typeof some>) => dossierOf(some(...given), jointsComplete);
const opening = (rightOfEyeIn: number) => ({
  id: 'hole',
  place: 'centre-stack' as const,
  widthIn: null,
  heightIn: null,
  depthIn: null,
  rightOfEyeIn,
  belowEyeIn: 8,
  eyeDistanceIn: 30,
});
const away = { place: 'copilot-panel' } as const;
const off = { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true };

testRule(approachAnnunciation, [
  {
    name: 'on its own screen at an approved place',
    dossier: panel({ place: 'centre-stack' }),
    types: [navigator],
    at,
    expect: 'met',
    message: 'shown',
  },
  {
    name: 'on its own screen out of view',
    dossier: panel(away),
    types: [navigator],
    at,
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'its place not recorded',
    dossier: panel({}),
    types: [navigator],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'on its own screen out of view, and nobody said that the joints are all',
    dossier: some(away),
    types: [navigator],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'out of view, repeated by a light',
    dossier: panel(away, light()),
    types: [navigator, lamp],
    at,
    expect: 'met',
  },
  {
    name: 'repeated by a light out of view',
    dossier: panel(away, light({ place: 'remote' })),
    types: [navigator, lamp],
    at,
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'nobody recorded where the light sits',
    dossier: panel(away, light({ place: null })),
    types: [navigator, lamp],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'the light is behind the panel, its manual silent',
    dossier: panel(away, light({ place: 'remote' })),
    types: [navigator, typeOf({ ...lamp, view: null })],
    at,
    expect: 'not-met',
  },
  {
    name: 'the screen of another navigator in view hears its data, and speaks of itself',
    dossier: dossierOf(
      {
        configuration: {
          units: [
            unitOf({ id: 'gps1', typeId: 'nx', ...away }),
            unitOf({ id: 'gps2', typeId: 'nx', place: 'centre-stack' }),
          ],
          links: [linkOf('gps1', 'BUS', 'gps2', 'BUS')],
        },
      },
      jointsComplete,
    ),
    types: [
      typeOf({
        ...navigator,
        ports: [
          { name: 'BUS', signal: 'data', direction: 'both', standard: 'arinc-429', speed: 12_500, requiredFor: [] },
        ],
      }),
    ],
    at,
    subject: 'gps1',
    expect: 'not-met',
  },
  {
    name: 'the light hears of integrity alone',
    dossier: panel(away, light(), 'FLAG'),
    types: [navigator, lamp],
    at,
    expect: 'not-met',
  },
  {
    name: 'the light is deactivated',
    dossier: panel(away, light({ deactivated: off })),
    types: [navigator, lamp],
    at,
    expect: 'not-met',
  },
  {
    name: 'the light is a portable device',
    dossier: panel(away, light({ typeId: null, functions: ['approach-annunciation', 'portable-display'] })),
    types: [navigator],
    at,
    expect: 'not-met',
  },
  {
    name: 'its manual lets its screen stand in for no annunciator',
    dossier: panel({ place: 'centre-stack' }),
    types: [forbidden],
    at,
    expect: 'not-met',
  },
  {
    name: 'approved for approaches, says nothing of them',
    dossier: panel({ place: 'centre-stack', approval: approvalOf({ grants: ['approach-lnav'] }) }),
    types: [silent],
    at,
    expect: 'not-met',
  },
  {
    name: 'approved for approaches beside other uses, says nothing of them',
    dossier: panel({ place: 'centre-stack', approval: approvalOf({ grants: ['nav-gnss', 'approach-lnav'] }) }),
    types: [silent],
    at,
    expect: 'not-met',
  },
  ...(
    [
      ['the manual silent on its place, 25 degrees to the side', 14, 'met'],
      ['the manual silent on its place, 36 degrees to the side', 22, 'not-met'],
    ] as const
  ).map(([name, rightOfEyeIn, expect]) => ({
    name,
    dossier: dossierOf(panel({ openingId: 'hole' }), { configuration: { openings: [opening(rightOfEyeIn)] } }),
    types: [typeOf({ ...navigator, view: null })],
    at,
    expect,
  })),
  {
    name: 'repeated by a light that hears of it within the data',
    dossier: panel(away, light(), 'BUS'),
    types: [talking, lamp],
    at,
    expect: 'met',
  },
  {
    name: 'the light hears of another navigator alone',
    dossier: dossierOf(
      {
        configuration: {
          units: [
            unitOf({ id: 'gps1', typeId: 'nx', ...away }),
            unitOf({ id: 'gps2', typeId: 'nx', ...away }),
            light(),
          ],
          links: [linkOf('gps2', 'APPR', 'ann1', 'approach-status')],
        },
      },
      jointsComplete,
    ),
    types: [navigator, lamp],
    at,
    subject: 'gps1',
    expect: 'not-met',
  },
  {
    name: 'what the joint to the light carries is not recorded',
    dossier: dossierOf(panel(away, light()), { configuration: { links: [linkOf('gps1', 'PIN 3', 'ann1', 'PIN 9')] } }),
    types: [navigator, lamp],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a line for the approach goes to a unit of which nothing is known',
    dossier: panel(away, unitOf({ id: 'ann1' })),
    types: [navigator],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'its data go to a unit of which nothing is known',
    dossier: panel(away, unitOf({ id: 'ann1' }), 'BUS'),
    types: [talking],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a line for integrity goes to a unit of which nothing is known',
    dossier: panel(away, unitOf({ id: 'ann1' }), 'FLAG'),
    types: [navigator],
    at,
    expect: 'not-met',
  },
  {
    name: 'approved for VFR alone, says nothing of approaches',
    dossier: panel({ approval: approvalOf({ grants: ['vfr-only'] }) }),
    types: [silent],
    at,
    expect: 'none',
  },
  { name: 'deactivated', dossier: panel({ deactivated: off }), types: [navigator], at, expect: 'none' },
  {
    name: 'portable',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'p', functions: ['gnss', 'approach-annunciation', 'portable-display'] })] },
    }),
    at,
    expect: 'none',
  },
]);
