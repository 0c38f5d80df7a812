import { linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { sourceSelector } from './source-selector.js';

const at = '2026-03-02T14:00Z';
const types = [
  typeOf({
    id: 'di2',
    functions: ['lateral-deviation'],
    ports: [
      { name: 'LAT', signal: 'lateral-deviation', direction: 'in', standard: 'analog', speed: null, requiredFor: [] },
    ],
  }),
  typeOf({
    id: 'ef1',
    functions: ['lateral-deviation', 'source-selector'],
    ports: [
      { name: 'LAT', signal: 'lateral-deviation', direction: 'in', standard: 'analog', speed: null, requiredFor: [] },
    ],
  }),
];
const gps = unitOf({ id: 'gps1', functions: ['gnss'] });
const nav = unitOf({ id: 'nav1', functions: ['vor-receiver'] });
const indicator = (typeId: string | null) =>
  unitOf({ id: 'cdi1', typeId, functions: typeId === null ? ['lateral-deviation'] : [] });
const relay = unitOf({ id: 'sel1', functions: ['source-selector'] });
const feed = (from: string, to = 'cdi1') =>
  linkOf(from, 'lateral-deviation', to, to === 'cdi1' ? 'LAT' : 'lateral-deviation');
const graph = (units: ReturnType<typeof unitOf>[], ...links: ReturnType<typeof linkOf>[]) =>
  dossierOf({ configuration: { units, links } });

testRule(sourceSelector, [
  {
    name: 'two sources joined straight to one indicator',
    dossier: graph([gps, nav, indicator('di2')], feed('gps1'), feed('nav1')),
    types,
    at,
    subject: 'cdi1',
    expect: 'not-met',
    message: 'together',
    data: { sources: 'gps1, nav1' },
  },
  {
    name: 'through a selector or relay',
    dossier: graph([gps, nav, relay, indicator('di2')], feed('gps1', 'sel1'), feed('nav1', 'sel1'), feed('sel1')),
    types,
    at,
    subject: 'cdi1',
    expect: 'met',
    message: 'selected',
  },
  {
    name: 'the former source kept beside the selector',
    dossier: graph([gps, nav, relay, indicator('di2')], feed('gps1', 'sel1'), feed('nav1'), feed('sel1')),
    types,
    at,
    subject: 'cdi1',
    expect: 'not-met',
  },
  {
    name: 'the indicator selects by itself',
    dossier: graph([gps, nav, indicator('ef1')], feed('gps1'), feed('nav1')),
    types,
    at,
    subject: 'cdi1',
    expect: 'met',
  },
  {
    name: 'of the indicator no manual is known',
    dossier: dossierOf({
      configuration: {
        units: [gps, nav, indicator(null)],
        links: [linkOf('gps1', 'lateral-deviation', 'cdi1', 'a'), linkOf('nav1', 'lateral-deviation', 'cdi1', 'b')],
      },
    }),
    types,
    at,
    subject: 'cdi1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'two sources joined straight to an indicator of vertical deviation',
    dossier: graph(
      [
        gps,
        unitOf({ id: 'nav1', functions: ['gs-receiver'] }),
        unitOf({ id: 'vdi', functions: ['vertical-deviation'] }),
      ],
      linkOf('gps1', 'vertical-deviation', 'vdi', 'vertical-deviation'),
      linkOf('nav1', 'vertical-deviation', 'vdi', 'vertical-deviation'),
    ),
    at,
    subject: 'vdi',
    expect: 'cannot-tell',
  },
  {
    name: 'one source',
    dossier: graph([gps, nav, indicator('di2')], feed('gps1')),
    types,
    at,
    subject: 'cdi1',
    expect: 'none',
  },
  {
    name: 'the other source is deactivated',
    dossier: graph(
      [
        gps,
        { ...nav, deactivated: { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true } },
        indicator('di2'),
      ],
      feed('gps1'),
      feed('nav1'),
    ),
    types,
    at,
    subject: 'cdi1',
    expect: 'none',
  },
  {
    name: 'an indicator that nothing is joined to',
    dossier: graph([gps, nav, indicator('di2')]),
    types,
    at,
    subject: 'cdi1',
    expect: 'none',
  },
]);
