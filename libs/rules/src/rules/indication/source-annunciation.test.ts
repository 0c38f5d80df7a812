import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf, jointsComplete } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { FunctionCode } from '../../catalogue/type.js';
import { sourceAnnunciation } from './source-annunciation.js';

const at = '2026-03-02T14:00Z';
const lateral = (from: string, to: string) => linkOf(from, 'lateral-deviation', to, 'lateral-deviation');
const unit = (id: string, ...functions: FunctionCode[]) => unitOf({ id, functions });
const gps = unit('gps1', 'gnss');
const nav = unit('nav1', 'vor-receiver', 'loc-receiver');
const cdi = unit('cdi1', 'lateral-deviation');
/** Joints as they stand, and nobody said that they are all. */
const some = (units: ReturnType<typeof unitOf>[], ...links: ReturnType<typeof linkOf>[]) =>
  dossierOf({
    configuration: {
      units,
      links,
      openings: [
        {
          id: 'hole',
          place: 'pilot-panel',
          widthIn: null,
          heightIn: null,
          depthIn: null,
          rightOfEyeIn: 14,
          belowEyeIn: 8,
          eyeDistanceIn: 30,
        },
      ],
    },
  });
const graph = (...given: Parameters<typeof some>) => dossierOf(some(...given), jointsComplete);
/** In an opening 25 degrees to the side: within the wider cone. */
const inView = (each: ReturnType<typeof unitOf>) => ({ ...each, openingId: 'hole' });
const label = (chain: string, unitId: string) => `${chain}:${unitId}:source-annunciation`;
const shared = graph([gps, nav, cdi], lateral('gps1', 'cdi1'), lateral('nav1', 'cdi1'));
const throughSelector = (selector: ReturnType<typeof unitOf>, ...more: ReturnType<typeof unitOf>[]) =>
  graph(
    [gps, nav, cdi, selector, ...more],
    lateral('gps1', 'sel'),
    lateral('nav1', 'sel'),
    lateral('sel', 'cdi1'),
    ...more.map((each) => linkOf('sel', 'source-status', each.id, 'source-status')),
  );

testRule(sourceAnnunciation, [
  {
    name: 'shared and unlabelled: lost for the first source',
    dossier: shared,
    at,
    subject: 'gps1>cdi1',
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'shared and unlabelled: lost for the second source as well',
    dossier: shared,
    at,
    subject: 'nav1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'the indicator labels its source',
    dossier: graph(
      [gps, nav, unit('cdi1', 'lateral-deviation', 'source-annunciation')],
      lateral('gps1', 'cdi1'),
      lateral('nav1', 'cdi1'),
    ),
    at,
    subject: label('gps1>cdi1', 'cdi1'),
    expect: 'met',
    message: 'shown',
  },
  {
    name: 'the indicator labels its source, and its manual lets that stand in for nothing',
    dossier: graph([gps, nav, unitOf({ id: 'cdi1', typeId: 'ix' })], lateral('gps1', 'cdi1'), lateral('nav1', 'cdi1')),
    types: [
      typeOf({
        id: 'ix',
        functions: ['lateral-deviation', 'source-annunciation'],
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
        limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['source-annunciation'] })],
      }),
    ],
    at,
    subject: label('gps1>cdi1', 'cdi1'),
    expect: 'not-met',
    message: 'no-substitute',
  },
  {
    name: 'shared and unlabelled, and nobody said that the joints are all',
    dossier: some([gps, nav, cdi], lateral('gps1', 'cdi1'), lateral('nav1', 'cdi1')),
    at,
    subject: 'gps1>cdi1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'what the joint of the selector to a light carries is not recorded',
    dossier: dossierOf(throughSelector(unit('sel', 'source-selector'), unit('light', 'source-annunciation')), {
      configuration: {
        links: [
          lateral('gps1', 'sel'),
          lateral('nav1', 'sel'),
          lateral('sel', 'cdi1'),
          linkOf('sel', 'PIN 3', 'light', 'PIN 9'),
        ],
      },
    }),
    at,
    subject: 'gps1>cdi1',
    expect: 'cannot-tell',
  },
  {
    name: 'the selector tells a unit of which nothing is known',
    dossier: throughSelector(unit('sel', 'source-selector'), unit('box')),
    at,
    subject: 'gps1>cdi1',
    expect: 'cannot-tell',
  },
  {
    name: 'through a selector that says nothing',
    dossier: throughSelector(unit('sel', 'source-selector')),
    at,
    subject: 'nav1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'through a selector that shows its position',
    dossier: throughSelector(inView(unit('sel', 'source-selector', 'source-annunciation'))),
    at,
    subject: label('nav1>cdi1', 'sel'),
    expect: 'met',
  },
  {
    name: 'through a selector behind the panel that shows its position there',
    dossier: throughSelector({ ...unit('sel', 'source-selector', 'source-annunciation'), place: 'remote' }),
    at,
    subject: label('nav1>cdi1', 'sel'),
    expect: 'not-met',
    message: 'hidden',
  },
  {
    name: 'a light in view joined to a selector behind the panel that shows its position there',
    dossier: throughSelector(
      { ...unit('sel', 'source-selector', 'source-annunciation'), place: 'remote' },
      inView(unit('light', 'source-annunciation')),
    ),
    at,
    subject: label('nav1>cdi1', 'light'),
    expect: 'met',
  },
  {
    name: 'a light joined to the selector',
    dossier: throughSelector(unit('sel', 'source-selector'), inView(unit('light', 'source-annunciation'))),
    at,
    subject: label('gps1>cdi1', 'light'),
    expect: 'met',
    data: { by: 'light' },
  },
  {
    name: 'nobody recorded where the light joined to the selector sits',
    dossier: throughSelector(unit('sel', 'source-selector'), unit('light', 'source-annunciation')),
    at,
    subject: label('gps1>cdi1', 'light'),
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'the light joined to the selector is behind the panel',
    dossier: throughSelector(unit('sel', 'source-selector'), {
      ...unit('light', 'source-annunciation'),
      place: 'remote',
    }),
    at,
    subject: label('gps1>cdi1', 'light'),
    expect: 'not-met',
    message: 'hidden',
  },
  {
    name: 'a light joined to nothing',
    dossier: graph(
      [gps, nav, cdi, unit('light', 'source-annunciation')],
      lateral('gps1', 'cdi1'),
      lateral('nav1', 'cdi1'),
    ),
    at,
    subject: 'gps1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'the light is deactivated',
    dossier: throughSelector(unit('sel', 'source-selector'), {
      ...unit('light', 'source-annunciation'),
      deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true },
    }),
    at,
    subject: 'gps1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'a portable device that the selector tells',
    dossier: throughSelector(unit('sel', 'source-selector'), unit('tab1', 'source-annunciation', 'portable-display')),
    at,
    subject: 'gps1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'a light that another selector tells',
    dossier: graph(
      [
        gps,
        nav,
        cdi,
        unit('sel', 'source-selector'),
        unit('sel2', 'source-selector'),
        unit('light', 'source-annunciation'),
      ],
      lateral('gps1', 'sel'),
      lateral('nav1', 'sel'),
      lateral('sel', 'cdi1'),
      linkOf('sel2', 'source-status', 'light', 'source-status'),
    ),
    at,
    subject: 'gps1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'a light that hears something else of the selector',
    dossier: graph(
      [gps, nav, cdi, unit('sel', 'source-selector'), unit('light', 'source-annunciation')],
      lateral('gps1', 'sel'),
      lateral('nav1', 'sel'),
      lateral('sel', 'cdi1'),
      linkOf('sel', 'approach-status', 'light', 'approach-status'),
    ),
    at,
    subject: 'gps1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'one box that is satellite and localizer receiver, unlabelled',
    dossier: graph([unit('n', 'gnss', 'loc-receiver'), cdi], lateral('n', 'cdi1')),
    at,
    expect: 'not-met',
  },
  {
    name: 'shared for vertical deviation alone',
    dossier: graph(
      [gps, unit('nav1', 'loc-receiver', 'gs-receiver'), unit('vdi', 'vertical-deviation')],
      linkOf('gps1', 'vertical-deviation', 'vdi', 'vertical-deviation'),
      linkOf('nav1', 'vertical-deviation', 'vdi', 'vertical-deviation'),
    ),
    at,
    subject: 'gps1>vdi',
    expect: 'not-met',
  },
  {
    name: 'one box that is two sources, unlabelled',
    dossier: graph([unit('n', 'gnss', 'vor-receiver'), cdi], lateral('n', 'cdi1')),
    at,
    expect: 'not-met',
  },
  {
    name: 'one box that is two sources and says which it sends',
    dossier: graph([inView(unit('n', 'gnss', 'vor-receiver', 'source-annunciation')), cdi], lateral('n', 'cdi1')),
    at,
    subject: label('n>cdi1', 'n'),
    expect: 'met',
  },
  {
    name: 'such a box cannot speak for a second one on the same indicator',
    dossier: graph(
      [unit('n', 'gnss', 'vor-receiver', 'source-annunciation'), nav, cdi],
      lateral('n', 'cdi1'),
      lateral('nav1', 'cdi1'),
    ),
    at,
    subject: 'n>cdi1',
    expect: 'not-met',
  },
  {
    name: 'the other sender is a unit of which nothing is known',
    dossier: graph([nav, unitOf({ id: 'x' }), cdi], lateral('nav1', 'cdi1'), lateral('x', 'cdi1')),
    at,
    subject: 'nav1>cdi1',
    expect: 'not-met',
  },
  { name: 'each on its own indicator', dossier: graph([gps, cdi], lateral('gps1', 'cdi1')), at, expect: 'none' },
  {
    name: 'the other sender is deactivated',
    dossier: graph(
      [gps, { ...nav, deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true } }, cdi],
      lateral('gps1', 'cdi1'),
      lateral('nav1', 'cdi1'),
    ),
    at,
    expect: 'none',
  },
  {
    name: 'a glide slope receiver on an indicator shared with satellite navigation',
    dossier: graph(
      [gps, unit('nav1', 'loc-receiver', 'gs-receiver'), cdi],
      lateral('gps1', 'cdi1'),
      lateral('nav1', 'cdi1'),
    ),
    at,
    subject: 'nav1>cdi1',
    expect: 'not-met',
  },
  {
    name: 'one box that is two sources, joined to no indicator',
    dossier: graph([unit('n', 'gnss', 'vor-receiver')]),
    at,
    expect: 'none',
  },
]);
