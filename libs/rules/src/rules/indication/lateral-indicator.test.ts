import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf, jointsComplete } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { goodDay, trainer, trainerTypes } from '../../../testing/trainer.js';
import { lateralIndicator } from './lateral-indicator.js';

const receiver = unitOf({ id: 'nav1', functions: ['vor-receiver'] });
const indicator = unitOf({ id: 'cdi1', functions: ['lateral-deviation'] });
const selector = unitOf({ id: 'sel', functions: ['source-selector'] });
const joined = linkOf('nav1', 'lateral-deviation', 'cdi1', 'lateral-deviation');
const selfShowing = typeOf({ id: 'nx', functions: ['gnss', 'lateral-deviation'] });
const forbidden = typeOf({
  ...selfShowing,
  limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['lateral-deviation'] })],
});
const navigator = { configuration: { units: [unitOf({ id: 'nav2', typeId: 'nx' })] } };

testRule(lateralIndicator, [
  {
    name: 'joined',
    dossier: dossierOf({ configuration: { units: [receiver, indicator], links: [joined] } }),
    at: '2026-03-02T14:00Z',
    subject: 'nav1>cdi1',
    expect: 'met',
    message: 'joined',
  },
  {
    name: 'through a selector',
    dossier: dossierOf({
      configuration: {
        units: [receiver, indicator, selector],
        links: [
          linkOf('nav1', 'lateral-deviation', 'sel', 'lateral-deviation'),
          linkOf('sel', 'lateral-deviation', 'cdi1', 'lateral-deviation'),
        ],
      },
    }),
    at: '2026-03-02T14:00Z',
    subject: 'nav1>cdi1',
    expect: 'met',
  },
  {
    name: 'joined to nothing, and the joints are all',
    dossier: dossierOf({ configuration: { units: [receiver, indicator] } }, jointsComplete),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'no joint recorded, and nobody said that the joints are all',
    dossier: dossierOf({ configuration: { units: [receiver, indicator] } }),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'what the joint to the indicator carries is not recorded',
    dossier: dossierOf(
      { configuration: { units: [receiver, indicator], links: [linkOf('nav1', 'PIN 3', 'cdi1', 'PIN 9')] } },
      jointsComplete,
    ),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'cannot-tell',
  },
  {
    name: 'what the joint from the selector to the indicator carries is not recorded',
    dossier: dossierOf(
      {
        configuration: {
          units: [receiver, indicator, selector],
          links: [
            linkOf('nav1', 'lateral-deviation', 'sel', 'lateral-deviation'),
            linkOf('sel', 'PIN 3', 'cdi1', 'PIN 9'),
          ],
        },
      },
      jointsComplete,
    ),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'cannot-tell',
  },
  {
    name: 'deviation goes to a unit of which nothing is known',
    dossier: dossierOf(
      { configuration: { units: [receiver, unitOf({ id: 'cdi1' })], links: [joined] } },
      jointsComplete,
    ),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'cannot-tell',
  },
  {
    name: 'a joint of which nothing is recorded goes to a portable device',
    dossier: dossierOf(
      {
        configuration: {
          units: [receiver, unitOf({ id: 'cdi1', functions: ['lateral-deviation', 'portable-display'] })],
          links: [linkOf('nav1', 'PIN 3', 'cdi1', 'PIN 9')],
        },
      },
      jointsComplete,
    ),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'not-met',
  },
  {
    name: 'another joint of which nothing is recorded goes to a radio',
    dossier: dossierOf(
      {
        configuration: {
          units: [receiver, indicator, unitOf({ id: 'com1', functions: ['com'] })],
          links: [linkOf('nav1', 'PIN 3', 'com1', 'PIN 9')],
        },
      },
      jointsComplete,
    ),
    at: '2026-03-02T14:00Z',
    subject: 'nav1',
    expect: 'not-met',
  },
  {
    name: 'only glide path joined',
    dossier: dossierOf({
      configuration: {
        units: [receiver, unitOf({ id: 'gs', functions: ['vertical-deviation'] })],
        links: [linkOf('nav1', 'vertical-deviation', 'gs', 'vertical-deviation')],
      },
      ...jointsComplete,
    }),
    at: '2026-03-02T14:00Z',
    subject: 'nav1>gs',
    expect: 'not-met',
  },
  {
    name: 'own display, manual silent',
    dossier: dossierOf(navigator),
    types: [selfShowing],
    at: '2026-03-02T14:00Z',
    subject: 'nav2>nav2',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'own display, manual forbids it as a substitute',
    dossier: dossierOf(navigator, jointsComplete),
    types: [forbidden],
    at: '2026-03-02T14:00Z',
    subject: 'nav2>nav2',
    expect: 'not-met',
  },
  {
    name: 'own display, manual forbids it as a substitute, and nobody said that the joints are all',
    dossier: dossierOf(navigator),
    types: [forbidden],
    at: '2026-03-02T14:00Z',
    subject: 'nav2>nav2',
    expect: 'cannot-tell',
  },
  {
    name: 'own display, manual approves its place',
    dossier: dossierOf(navigator),
    types: [
      typeOf({
        ...selfShowing,
        view: {
          approvedPlaces: ['centre-stack'],
          maxHorizontalDeg: null,
          maxOffsetIn: null,
          document: 'Installation manual nx',
        },
      }),
    ],
    at: '2026-03-02T14:00Z',
    subject: 'nav2>nav2',
    expect: 'met',
  },
  {
    name: 'no source of guidance',
    dossier: dossierOf({ configuration: { units: [indicator] } }),
    at: '2026-03-02T14:00Z',
    expect: 'none',
  },
  {
    name: 'a portable device is no indicator',
    dossier: dossierOf({
      configuration: {
        units: [receiver, unitOf({ id: 'cdi1', functions: ['lateral-deviation', 'portable-display'] })],
        links: [joined],
      },
      ...jointsComplete,
    }),
    at: '2026-03-02T14:00Z',
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'a portable receiver is no source of IFR guidance',
    dossier: dossierOf({
      configuration: {
        units: [unitOf({ id: 'nav1', functions: ['vor-receiver', 'portable-display'] }), indicator],
        links: [joined],
      },
    }),
    at: '2026-03-02T14:00Z',
    expect: 'none',
  },
  {
    name: 'a well-kept trainer',
    dossier: trainer(),
    types: Object.values(trainerTypes),
    at: goodDay,
    expect: 'met',
  },
  {
    name: 'own display, in no catalogue',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'nav2', functions: ['gnss', 'lateral-deviation'] })] },
    }),
    at: '2026-03-02T14:00Z',
    subject: 'nav2>nav2',
    expect: 'cannot-tell',
  },
]);
