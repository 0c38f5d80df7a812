import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf, jointsComplete } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import { verticalIndicator } from './vertical-indicator.js';

const at = '2026-03-02T14:00Z';
const ils = unitOf({ id: 'nav1', functions: ['loc-receiver', 'gs-receiver'] });
const cdi = unitOf({ id: 'cdi1', functions: ['lateral-deviation', 'vertical-deviation'] });
const selector = unitOf({ id: 'sel', functions: ['source-selector'] });
const joint = (from: string, to: string, signal: string) => linkOf(from, signal, to, signal);
/** Joints as they stand, and nobody said that they are all. */
const some = (units: ReturnType<typeof unitOf>[], ...links: ReturnType<typeof linkOf>[]) =>
  dossierOf({ configuration: { units, links } });
const graph = (...given: Parameters<typeof some>) => dossierOf(some(...given), jointsComplete);
const own = (part: Partial<EquipmentType>) =>
  typeOf({ id: 'nx', functions: ['gnss', 'lateral-deviation', 'vertical-deviation'], ...part });
const alone = graph([unitOf({ id: 'nav2', typeId: 'nx' })]);
const view = { approvedPlaces: ['centre-stack' as const], maxHorizontalDeg: null, maxOffsetIn: null, document: 'nx' };

testRule(verticalIndicator, [
  {
    name: 'both deviations joined',
    dossier: graph([ils, cdi], joint('nav1', 'cdi1', 'lateral-deviation'), joint('nav1', 'cdi1', 'vertical-deviation')),
    at,
    subject: 'nav1>cdi1',
    expect: 'met',
    message: 'joined',
  },
  {
    name: 'lateral alone',
    dossier: graph([ils, cdi], joint('nav1', 'cdi1', 'lateral-deviation')),
    at,
    subject: 'nav1>cdi1',
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'the wire is there, the indicator shows no vertical deviation',
    dossier: graph(
      [ils, unitOf({ id: 'cdi1', functions: ['lateral-deviation'] })],
      joint('nav1', 'cdi1', 'lateral-deviation'),
      joint('nav1', 'cdi1', 'vertical-deviation'),
    ),
    at,
    subject: 'nav1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'through a selector',
    dossier: graph(
      [ils, selector, cdi],
      joint('nav1', 'sel', 'vertical-deviation'),
      joint('sel', 'cdi1', 'vertical-deviation'),
    ),
    at,
    subject: 'nav1>cdi1',
    expect: 'met',
  },
  {
    name: 'the indicator is deactivated',
    dossier: graph(
      [ils, { ...cdi, deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true } }],
      joint('nav1', 'cdi1', 'vertical-deviation'),
    ),
    at,
    subject: 'nav1',
    expect: 'not-met',
  },
  { name: 'joined to nothing, and the joints are all', dossier: graph([ils]), at, expect: 'not-met' },
  {
    name: 'no joint recorded, and nobody said that the joints are all',
    dossier: some([ils]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'lateral alone recorded, and nobody said that the joints are all',
    dossier: some([ils, cdi], joint('nav1', 'cdi1', 'lateral-deviation')),
    at,
    subject: 'nav1>cdi1',
    expect: 'cannot-tell',
  },
  {
    name: 'what a second joint to the indicator carries is not recorded',
    dossier: graph([ils, cdi], joint('nav1', 'cdi1', 'lateral-deviation'), linkOf('nav1', 'PIN 3', 'cdi1', 'PIN 9')),
    at,
    subject: 'nav1>cdi1',
    expect: 'cannot-tell',
  },
  {
    name: 'own display, manual forbids it as a substitute, and nobody said that the joints are all',
    dossier: some([unitOf({ id: 'nav2', typeId: 'nx' })]),
    types: [
      own({
        view,
        limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['vertical-deviation'] })],
      }),
    ],
    at,
    subject: 'nav2>nav2',
    expect: 'cannot-tell',
  },
  {
    name: 'own display, manual silent',
    dossier: alone,
    types: [own({})],
    at,
    subject: 'nav2>nav2',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'own display, manual approves its place',
    dossier: alone,
    types: [own({ view })],
    at,
    subject: 'nav2>nav2',
    expect: 'met',
  },
  {
    name: 'own display, manual forbids it as a substitute',
    dossier: alone,
    types: [
      own({
        view,
        limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['vertical-deviation'] })],
      }),
    ],
    at,
    subject: 'nav2>nav2',
    expect: 'not-met',
  },
  {
    name: 'its own display without vertical costs nothing on the indicator that has it',
    dossier: graph([unitOf({ id: 'nav2', typeId: 'nx' }), cdi], joint('nav2', 'cdi1', 'vertical-deviation')),
    types: [
      own({
        functions: ['gnss', 'lateral-deviation'],
        ports: [
          {
            name: 'vertical-deviation',
            signal: 'vertical-deviation',
            direction: 'out',
            standard: 'analog',
            speed: null,
            requiredFor: [],
          },
        ],
      }),
    ],
    at,
    subject: 'nav2>cdi1',
    expect: 'met',
  },
  {
    name: 'a VOR receiver guides nobody down',
    dossier: graph([unitOf({ id: 'nav1', functions: ['vor-receiver'] })]),
    at,
    expect: 'none',
  },
  {
    name: 'own display, in no catalogue',
    dossier: graph([unitOf({ id: 'nav2', functions: ['gnss', 'lateral-deviation', 'vertical-deviation'] })]),
    at,
    subject: 'nav2>nav2',
    expect: 'cannot-tell',
  },
  {
    name: 'a localizer without glide slope guides nobody down',
    dossier: graph([unitOf({ id: 'nav1', functions: ['loc-receiver'] })]),
    at,
    expect: 'none',
  },
]);
