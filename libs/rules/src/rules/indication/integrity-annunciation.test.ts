import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Place } from '../../catalogue/words.js';
import { integrityAnnunciation } from './integrity-annunciation.js';

const at = '2026-03-02T14:00Z';
const own = typeOf({
  id: 'nx',
  functions: ['gnss', 'integrity-annunciation'],
  view: {
    approvedPlaces: ['centre-stack'],
    maxHorizontalDeg: null,
    maxOffsetIn: null,
    document: 'Installation manual nx',
  },
  ports: [
    { name: 'FLAG', signal: 'integrity-flag', direction: 'out', standard: 'discrete', speed: null, requiredFor: [] },
  ],
});
const silent = typeOf({ ...own, functions: ['gnss'] });
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
const light = (functions: Parameters<typeof unitOf>[0]['functions'] = ['integrity-annunciation']) =>
  unitOf({ id: 'light', ...(functions ? { functions } : {}) });
const panel = (place: Place | null, units: ReturnType<typeof unitOf>[] = [], port: string | null = null) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', typeId: 'nx', place }), ...units],
      links: port === null ? [] : [linkOf('gps1', port, 'light', 'integrity-flag')],
    },
  });

testRule(integrityAnnunciation, [
  {
    name: 'on its own screen in an approved place',
    dossier: panel('centre-stack'),
    types: [own],
    at,
    expect: 'met',
    message: 'shown',
  },
  {
    name: 'on its own screen, which its manual lets stand in for no annunciator',
    dossier: panel('centre-stack'),
    types: [
      typeOf({
        ...own,
        limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['integrity-annunciation'] })],
      }),
    ],
    at,
    expect: 'not-met',
  },
  {
    name: 'on a portable device joined to it',
    dossier: panel('copilot-panel', [light(['integrity-annunciation', 'portable-display'])], 'FLAG'),
    types: [own],
    at,
    expect: 'not-met',
  },
  {
    name: 'on its own screen out of view',
    dossier: panel('copilot-panel'),
    types: [own],
    at,
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'on its own screen, place not recorded',
    dossier: panel(null),
    types: [own],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'out of view, but a light is joined',
    dossier: panel('copilot-panel', [light()], 'FLAG'),
    types: [own],
    at,
    expect: 'met',
  },
  {
    name: 'the light is there and joined to nothing',
    dossier: panel('copilot-panel', [light()]),
    types: [own],
    at,
    expect: 'not-met',
  },
  // A warning: within the cone that the eye takes in by turning alone, 15 degrees.
  ...(
    [
      ['the manual silent on its place, 14 degrees to the side', 7.5, 'met'],
      ['the manual silent on its place, 25 degrees to the side', 14, 'not-met'],
    ] as const
  ).map(([name, rightOfEyeIn, expect]) => ({
    name,
    dossier: dossierOf(panel(null), {
      configuration: {
        units: [unitOf({ id: 'gps1', typeId: 'nx', openingId: 'hole' })],
        openings: [opening(rightOfEyeIn)],
      },
    }),
    types: [typeOf({ ...own, view: null })],
    at,
    expect,
  })),
  {
    name: 'out of view, a light hears of it within the data',
    dossier: panel('copilot-panel', [light()], 'BUS'),
    types: [
      typeOf({
        ...own,
        ports: [
          { name: 'BUS', signal: 'data', direction: 'out', standard: 'arinc-429', speed: 12_500, requiredFor: [] },
        ],
      }),
    ],
    at,
    expect: 'met',
  },
  {
    name: 'the light hears of another navigator alone',
    dossier: dossierOf({
      configuration: {
        units: [
          unitOf({ id: 'gps1', typeId: 'nx', place: 'copilot-panel' }),
          unitOf({ id: 'gps2', typeId: 'nx', place: 'copilot-panel' }),
          light(),
        ],
        links: [linkOf('gps2', 'FLAG', 'light', 'integrity-flag')],
      },
    }),
    types: [own],
    at,
    subject: 'gps1',
    expect: 'not-met',
  },
  {
    name: 'the joined unit annunciates something else',
    dossier: panel('copilot-panel', [light(['approach-annunciation'])], 'FLAG'),
    types: [own],
    at,
    expect: 'not-met',
  },
  {
    name: 'the light is deactivated',
    dossier: panel(
      'copilot-panel',
      [{ ...light(), deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true } }],
      'FLAG',
    ),
    types: [own],
    at,
    expect: 'not-met',
  },
  { name: 'none at all', dossier: panel('centre-stack'), types: [silent], at, expect: 'not-met' },
  {
    name: 'VHF navigation asks for none',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'nav1', functions: ['vor-receiver'] })] } }),
    at,
    expect: 'none',
  },
]);
