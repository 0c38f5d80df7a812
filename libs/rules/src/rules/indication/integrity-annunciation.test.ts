import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf, jointsComplete } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { FunctionCode } from '../../catalogue/type.js';
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
const lamp = typeOf({
  id: 'lx',
  functions: ['integrity-annunciation'],
  view: { approvedPlaces: ['glareshield'], maxHorizontalDeg: null, maxOffsetIn: null, document: 'Manual lx' },
});
const light = (place: Place | null = 'glareshield') => unitOf({ id: 'light', typeId: 'lx', place });
const lightOf = (...functions: readonly FunctionCode[]) =>
  unitOf({ id: 'light', functions: [...functions], place: 'glareshield' });
/** Joints as they stand, and nobody said that they are all. */
const some = (place: Place | null, units: ReturnType<typeof unitOf>[] = [], port: string | null = null) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', typeId: 'nx', place }), ...units],
      links: port === null ? [] : [linkOf('gps1', port, 'light', port === 'PIN 3' ? 'PIN 9' : 'integrity-flag')],
    },
  });
const panel = (...given: Parameters<typeof some>) => dossierOf(some(...given), jointsComplete);
const onItself = 'gps1:gps1:integrity-annunciation';
const onLight = 'gps1:light:integrity-annunciation';
const bus = typeOf({
  ...own,
  ports: [{ name: 'BUS', signal: 'data', direction: 'out', standard: 'arinc-429', speed: 12_500, requiredFor: [] }],
});
/** Two navigators that hear each other's data; the second sits at this place. */
const crossed = (place: Place, port = 'BUS') =>
  dossierOf(
    {
      configuration: {
        units: [
          unitOf({ id: 'gps1', typeId: 'nx', place: 'copilot-panel' }),
          unitOf({ id: 'gps2', typeId: 'nx', place }),
        ],
        links: [linkOf('gps1', port, 'gps2', port), linkOf('gps2', port, 'gps1', port)],
      },
    },
    jointsComplete,
  );

testRule(integrityAnnunciation, [
  {
    name: 'on its own screen in an approved place',
    dossier: panel('centre-stack'),
    types: [own],
    at,
    subject: onItself,
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
    dossier: panel('copilot-panel', [lightOf('integrity-annunciation', 'portable-display')], 'FLAG'),
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
    message: 'hidden',
  },
  {
    name: 'on its own screen out of view, and nobody said that the joints are all',
    dossier: some('copilot-panel'),
    types: [own],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
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
    types: [own, lamp],
    at,
    subject: onLight,
    expect: 'met',
    data: { by: 'light' },
  },
  {
    name: 'the light is what it leans on: its own screen stays out of view',
    dossier: panel('copilot-panel', [light()], 'FLAG'),
    types: [own, lamp],
    at,
    subject: onItself,
    expect: 'not-met',
    message: 'hidden',
  },
  {
    name: 'the light sits where its manual does not approve',
    dossier: panel('copilot-panel', [light('remote')], 'FLAG'),
    types: [own, lamp],
    at,
    subject: onLight,
    expect: 'not-met',
    message: 'hidden',
  },
  {
    name: 'nobody recorded where the light sits',
    dossier: panel('copilot-panel', [light(null)], 'FLAG'),
    types: [own, lamp],
    at,
    subject: onLight,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'the light is behind the panel, its manual silent',
    dossier: panel('copilot-panel', [light('remote')], 'FLAG'),
    types: [own, typeOf({ ...lamp, view: null })],
    at,
    subject: onLight,
    expect: 'not-met',
  },
  {
    name: 'the manual of the light lets it stand in for none',
    dossier: panel('copilot-panel', [light()], 'FLAG'),
    types: [
      own,
      typeOf({
        ...lamp,
        limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['integrity-annunciation'] })],
      }),
    ],
    at,
    subject: onLight,
    expect: 'not-met',
    message: 'no-substitute',
  },
  {
    name: 'the screen of another navigator out of view hears the data',
    dossier: crossed('copilot-panel'),
    types: [bus],
    at,
    subject: onItself,
    expect: 'not-met',
    message: 'hidden',
  },
  {
    name: 'the screen of another navigator in view hears the data, and speaks of itself',
    dossier: crossed('centre-stack'),
    types: [bus],
    at,
    subject: 'gps1:gps2:integrity-annunciation',
    expect: 'none',
  },
  {
    name: 'a line of its own tells the other navigator, which is in view',
    dossier: crossed('centre-stack', 'FLAG'),
    types: [own],
    at,
    subject: 'gps1:gps2:integrity-annunciation',
    expect: 'met',
  },
  {
    name: 'a display with a receiver of its own shows its deviation and hears its data',
    dossier: dossierOf(
      {
        configuration: {
          units: [
            unitOf({ id: 'gps1', functions: ['gnss'] }),
            unitOf({
              id: 'display',
              openingId: 'hole',
              functions: ['gnss', 'lateral-deviation', 'integrity-annunciation'],
            }),
          ],
          openings: [opening(7.5)],
          links: [
            linkOf('gps1', 'lateral-deviation', 'display', 'lateral-deviation'),
            linkOf('gps1', 'data', 'display', 'data'),
          ],
        },
      },
      jointsComplete,
    ),
    at,
    subject: 'gps1>display:display:integrity-annunciation',
    expect: 'met',
  },
  {
    name: 'told twice, by a line and within the data: one light',
    dossier: dossierOf(panel('copilot-panel', [light()]), {
      configuration: {
        links: [linkOf('gps1', 'BUS', 'light', 'BUS'), linkOf('gps1', 'FLAG', 'light', 'FLAG')],
      },
    }),
    types: [typeOf({ ...own, ports: [...bus.ports, ...own.ports] }), lamp],
    at,
    subject: onLight,
    expect: 'met',
  },
  {
    name: 'the light is there and joined to nothing',
    dossier: panel('copilot-panel', [light()]),
    types: [own, lamp],
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
    name: 'the manual silent on its place, the opening not measured',
    dossier: dossierOf(panel(null), {
      configuration: {
        units: [unitOf({ id: 'gps1', typeId: 'nx', openingId: 'hole' })],
        openings: [{ ...opening(7.5), rightOfEyeIn: null }],
      },
    }),
    types: [typeOf({ ...own, view: null })],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'out of view, a light hears of it within the data',
    dossier: panel('copilot-panel', [light()], 'BUS'),
    types: [bus, lamp],
    at,
    subject: onLight,
    expect: 'met',
  },
  {
    name: 'what the joint to the light carries is not recorded',
    dossier: panel('copilot-panel', [light()], 'PIN 3'),
    types: [own, lamp],
    at,
    subject: onItself,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a flag goes to a unit of which nothing is known',
    dossier: panel('copilot-panel', [unitOf({ id: 'light' })], 'FLAG'),
    types: [own],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'its data go to a unit of which nothing is known',
    dossier: panel('copilot-panel', [unitOf({ id: 'light' })], 'BUS'),
    types: [bus],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a joint of which nothing is recorded goes to a unit that annunciates something else',
    dossier: panel('copilot-panel', [lightOf('approach-annunciation')], 'PIN 3'),
    types: [own],
    at,
    expect: 'not-met',
  },
  {
    name: 'the light hears of another navigator alone',
    dossier: dossierOf(
      {
        configuration: {
          units: [
            unitOf({ id: 'gps1', typeId: 'nx', place: 'copilot-panel' }),
            unitOf({ id: 'gps2', typeId: 'nx', place: 'copilot-panel' }),
            light(),
          ],
          links: [linkOf('gps2', 'FLAG', 'light', 'integrity-flag')],
        },
      },
      jointsComplete,
    ),
    types: [own, lamp],
    at,
    subject: onItself,
    expect: 'not-met',
  },
  {
    name: 'the joined unit annunciates something else',
    dossier: panel('copilot-panel', [lightOf('approach-annunciation')], 'FLAG'),
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
    types: [own, lamp],
    at,
    expect: 'not-met',
  },
  {
    name: 'none at all',
    dossier: panel('centre-stack'),
    types: [silent],
    at,
    subject: 'gps1',
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'none at all, and nobody said that the joints are all',
    dossier: some('centre-stack'),
    types: [silent],
    at,
    subject: 'gps1',
    expect: 'cannot-tell',
  },
  {
    name: 'VHF navigation asks for none',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'nav1', functions: ['vor-receiver'] })] } }),
    at,
    expect: 'none',
  },
]);
