import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Limitation } from '../../catalogue/type.js';
import { requiredCompanions } from './required-companions.js';

const at = '2026-03-02T14:00Z';
const navigator = (part: Partial<Limitation> = {}) =>
  typeOf({
    id: 'nx',
    functions: ['gnss', 'com'],
    limitations: [
      limitationOf({
        kind: 'requires',
        functions: ['gnss'],
        beyond: ['integrity-annunciation'],
        document: 'Manual nx',
        ...part,
      }),
    ],
  });
const inView = navigator({ places: ['pilot-panel', 'glareshield'] });
const own = unitOf({ id: 'gps1', typeId: 'nx' });
const lamp = (part: Partial<ReturnType<typeof unitOf>> = {}) =>
  unitOf({ id: 'ann1', functions: ['integrity-annunciation'], place: 'pilot-panel', ...part });
const stated = {
  status: { completeness: [{ list: 'links', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
} as const;
const aircraft = (...units: ReturnType<typeof unitOf>[]) =>
  dossierOf({
    configuration: { units: [own, ...units], links: units.map(({ id }) => linkOf('gps1', 'data', id, 'data')) },
  });

testRule(requiredCompanions, [
  {
    name: 'joined, no place named',
    dossier: aircraft(lamp({ place: 'pedestal' })),
    types: [navigator()],
    at,
    subject: 'gps1:gnss',
    expect: 'met',
    message: 'beside',
    data: { wanted: 'integrity annunciation', document: 'Manual nx' },
  },
  { name: 'at a place that is named', dossier: aircraft(lamp()), types: [inView], at, expect: 'met' },
  {
    name: 'at the other place that is named',
    dossier: aircraft(lamp({ place: 'glareshield' })),
    types: [inView],
    at,
    expect: 'met',
  },
  {
    name: 'somewhere else, list of joints stated complete',
    dossier: dossierOf(aircraft(lamp({ place: 'centre-stack' })), stated),
    types: [inView],
    at,
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'place not recorded',
    dossier: dossierOf(aircraft(lamp({ place: null })), stated),
    types: [inView],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'none joined, list stated complete',
    dossier: dossierOf(aircraft(), stated),
    types: [navigator()],
    at,
    expect: 'not-met',
  },
  {
    name: 'none joined, list open',
    dossier: aircraft(),
    types: [navigator()],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a neighbour of which nothing is known',
    dossier: dossierOf(aircraft(unitOf({ id: 'x' })), stated),
    types: [navigator()],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'joined, but deactivated',
    dossier: dossierOf(
      aircraft(lamp({ deactivated: { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true } })),
      stated,
    ),
    types: [navigator()],
    at,
    expect: 'not-met',
  },
  {
    name: 'a portable device is no companion',
    dossier: dossierOf(aircraft(lamp({ functions: ['integrity-annunciation', 'portable-display'] })), stated),
    types: [navigator()],
    at,
    expect: 'not-met',
  },
  {
    name: 'fitted, but joined to nothing',
    dossier: dossierOf(stated, { configuration: { units: [own, lamp()], links: [] } }),
    types: [navigator()],
    at,
    expect: 'not-met',
  },
  {
    name: 'joined the other way round',
    dossier: dossierOf(stated, {
      configuration: { units: [own, lamp()], links: [linkOf('ann1', 'data', 'gps1', 'data')] },
    }),
    types: [navigator()],
    at,
    expect: 'met',
  },
  {
    name: 'fitted, and joined both ways to another unit only',
    dossier: dossierOf(stated, {
      configuration: {
        units: [own, lamp(), unitOf({ id: 'gps2', functions: ['gnss'] })],
        links: [linkOf('gps2', 'data', 'ann1', 'data'), linkOf('ann1', 'data', 'gps2', 'data')],
      },
    }),
    types: [navigator()],
    at,
    expect: 'not-met',
  },
  {
    name: 'of several functions that will do, one is enough',
    dossier: dossierOf(aircraft(lamp()), stated),
    types: [navigator({ beyond: ['source-annunciation', 'integrity-annunciation'] })],
    at,
    expect: 'met',
  },
  {
    name: 'what another of its functions needs is no question of this one',
    dossier: dossierOf(aircraft(lamp()), stated),
    types: [
      typeOf({
        id: 'nx',
        functions: ['gnss', 'com'],
        limitations: [
          limitationOf({ kind: 'requires', functions: ['gnss'], beyond: ['integrity-annunciation'] }),
          limitationOf({ kind: 'requires', functions: ['com'], beyond: ['audio'] }),
        ],
      }),
    ],
    at,
    subject: 'gps1:gnss',
    expect: 'met',
    data: { wanted: 'integrity annunciation' },
  },
  {
    name: 'a function that it does not have',
    dossier: aircraft(lamp()),
    types: [navigator({ functions: ['dme'] })],
    at,
    expect: 'none',
  },
  {
    name: 'a limitation of another kind',
    dossier: aircraft(lamp()),
    types: [navigator({ kind: 'no-link' })],
    at,
    expect: 'none',
  },
  {
    name: 'two are wanted, one is joined: the other is named',
    dossier: dossierOf(aircraft(lamp()), stated),
    types: [
      typeOf({
        id: 'nx',
        functions: ['gnss'],
        limitations: [
          limitationOf({
            kind: 'requires',
            functions: ['gnss'],
            beyond: ['integrity-annunciation'],
            document: 'Manual nx',
          }),
          limitationOf({
            kind: 'requires',
            functions: ['gnss'],
            beyond: ['source-annunciation'],
            document: 'Bulletin 4',
          }),
        ],
      }),
    ],
    at,
    expect: 'not-met',
    message: 'missing',
    data: { wanted: 'source annunciation', document: 'Bulletin 4' },
  },
  {
    name: 'switched off for good, it needs nothing',
    dossier: dossierOf(stated, {
      configuration: {
        units: [{ ...own, deactivated: { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true } }],
      },
    }),
    types: [navigator()],
    at,
    expect: 'none',
  },
]);
