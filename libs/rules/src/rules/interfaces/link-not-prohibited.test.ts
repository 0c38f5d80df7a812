import { expect, it } from 'vitest';
import { limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { statements } from '../../../testing/rule-case.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Limitation, SignalCode } from '../../catalogue/type.js';
import { advice } from '../effects.js';
import { linkNotProhibited } from './link-not-prohibited.js';

const at = '2026-03-02T14:00Z';
const limit = (part: Partial<Limitation>): Limitation => limitationOf({ kind: 'no-link', paragraph: '3.7', ...part });
const noPortable = limit({ functions: ['portable-display'] });
// A traffic source may not feed a display while that display also takes traffic from a second source.
const noSecondTraffic = limit({
  kind: 'no-chain',
  functions: ['traffic-display'],
  beyond: ['active-traffic'],
  paragraph: '4.2',
});
const source = (...limitations: readonly Limitation[]) => typeOf({ id: 'nx', functions: ['gnss'], limitations });
const others = [
  typeOf({ id: 'pd', functions: ['portable-display'] }),
  typeOf({ id: 'td', functions: ['traffic-display'] }),
  typeOf({ id: 'at', functions: ['active-traffic'] }),
  typeOf({ id: 'cd', functions: ['lateral-deviation'] }),
];
const a = unitOf({ id: 'a', typeId: 'nx' });
const graph = (units: ReturnType<typeof unitOf>[], ...links: (readonly [string, string])[]) =>
  dossierOf({
    configuration: {
      units: [a, ...units],
      links: links.map(([from, to]) => linkOf(from, 'data', to, 'data', { id: `${from}-${to}` })),
    },
  });
const display = unitOf({ id: 'b', typeId: 'td' });
const traffic = unitOf({ id: 'c', typeId: 'at' });

const line = (name: string, signal: SignalCode, standard: 'audio' | 'rs-232' | 'power') => ({
  name,
  signal,
  standard,
  direction: 'both' as const,
  speed: null,
  requiredFor: [],
});
/** A navigator with a port for what is heard, one for position and one for power. */
const talking = (id: string, ...limitations: readonly Limitation[]) =>
  typeOf({
    id,
    functions: ['gnss'],
    limitations,
    ports: [line('AUDIO', 'audio', 'audio'), line('POS', 'position', 'rs-232'), line('PWR', 'power', 'power')],
  });
const wired = (from: string, to: string) =>
  dossierOf({
    configuration: {
      units: [a, unitOf({ id: 'b', typeId: 'ny' })],
      links: [linkOf('a', from, 'b', to, { id: 'a-b' })],
    },
  });

const audioToUnknown = {
  name: 'a wire for audio to a unit of which nothing is known: no guidance passes over it',
  dossier: wired('AUDIO', 'AUDIO'),
  types: [talking('nx', limit({ functions: ['gnss'] }))],
  at,
  expect: 'cannot-tell',
} as const;

it('a ban on what no wire for audio carries stops nothing, whatever the unknown unit is: its manual is wanted as advice', () => {
  const [draft] = statements(linkNotProhibited, audioToUnknown);
  expect(draft?.effects).toEqual(advice);
});

testRule(linkNotProhibited, [
  {
    name: 'nothing forbidden',
    dossier: graph([unitOf({ id: 'b', typeId: 'cd' })], ['a', 'b']),
    types: [source(), ...others],
    at,
    expect: 'met',
    message: 'allowed',
  },
  {
    name: 'a neighbour that the manual forbids',
    dossier: graph([unitOf({ id: 'b', typeId: 'pd' })], ['a', 'b']),
    types: [source(noPortable), ...others],
    at,
    expect: 'not-met',
    message: 'forbidden',
    data: { paragraph: '3.7' },
  },
  {
    name: 'a neighbour of another class',
    dossier: graph([display], ['a', 'b']),
    types: [source(noPortable), ...others],
    at,
    expect: 'met',
  },
  {
    name: 'the joint runs the other way',
    dossier: graph([unitOf({ id: 'b', typeId: 'pd' })], ['b', 'a']),
    types: [source(noPortable), ...others],
    at,
    expect: 'not-met',
  },
  {
    name: 'chain not yet closed',
    dossier: graph([display], ['a', 'b']),
    types: [source(noSecondTraffic), ...others],
    at,
    expect: 'met',
  },
  {
    name: 'chain closed, near joint',
    dossier: graph([display, traffic], ['a', 'b'], ['c', 'b']),
    types: [source(noSecondTraffic), ...others],
    at,
    subject: 'a-b',
    expect: 'not-met',
    data: { paragraph: '4.2' },
  },
  {
    name: 'chain closed, far joint: the limitation stands in the manual of a unit one joint away',
    dossier: graph([display, traffic], ['a', 'b'], ['c', 'b']),
    types: [source(noSecondTraffic), ...others],
    at,
    subject: 'c-b',
    expect: 'not-met',
  },
  {
    name: 'what the neighbour is joined to is not meant',
    dossier: graph([display, unitOf({ id: 'c', typeId: 'cd' })], ['a', 'b'], ['b', 'c']),
    types: [source(noSecondTraffic), ...others],
    at,
    subject: 'a-b',
    expect: 'met',
  },
  {
    name: 'of the unit beyond nothing is known',
    dossier: graph([display, unitOf({ id: 'c' })], ['a', 'b'], ['b', 'c']),
    types: [source(noSecondTraffic), ...others],
    at,
    subject: 'a-b',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'of the neighbour nothing is known',
    dossier: graph([unitOf({ id: 'b' })], ['a', 'b']),
    types: [source(noPortable), ...others],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'the neighbour is in no catalogue, so its manual is not read',
    dossier: graph([unitOf({ id: 'b', functions: ['lateral-deviation'] })], ['a', 'b']),
    types: [source(noPortable), ...others],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'not catalogued, but of a class that the other manual forbids',
    dossier: graph([unitOf({ id: 'b', functions: ['portable-display'] })], ['a', 'b']),
    types: [source(noPortable), ...others],
    at,
    expect: 'not-met',
  },
  {
    name: 'of a unit one joint away nothing is known, so its manual is not read',
    dossier: graph([display, unitOf({ id: 'c' })], ['a', 'b'], ['b', 'c']),
    types: [source(), ...others],
    at,
    subject: 'a-b',
    expect: 'cannot-tell',
  },
  {
    name: 'a wire for audio to another navigator, whose guidance the manual forbids to join',
    dossier: wired('AUDIO', 'AUDIO'),
    types: [talking('nx', limit({ functions: ['gnss'] })), talking('ny')],
    at,
    expect: 'met',
  },
  {
    name: 'a wire for position to another navigator',
    dossier: wired('POS', 'POS'),
    types: [talking('nx', limit({ functions: ['gnss'] })), talking('ny')],
    at,
    expect: 'not-met',
  },
  {
    name: 'a wire of which nobody knows what it carries',
    dossier: wired('J1', 'J1'),
    types: [talking('nx', limit({ functions: ['gnss'] })), talking('ny')],
    at,
    expect: 'not-met',
  },
  {
    name: 'a wire for power to another navigator',
    dossier: wired('PWR', 'PWR'),
    types: [talking('nx', limit({ functions: ['gnss'] })), talking('ny')],
    at,
    expect: 'met',
  },
  {
    name: 'a wire for audio to what is heard, which the manual forbids to join',
    dossier: wired('AUDIO', 'AUDIO'),
    types: [talking('nx', limit({ functions: ['com'] })), { ...talking('ny'), functions: ['gnss', 'com'] }],
    at,
    expect: 'not-met',
  },
  {
    name: 'a wire for audio to a portable device, of which the manual forbids any joint',
    dossier: wired('AUDIO', 'AUDIO'),
    types: [talking('nx', noPortable), { ...talking('ny'), functions: ['portable-display'] }],
    at,
    expect: 'not-met',
  },
  {
    name: 'a chain whose far half is a wire for audio',
    dossier: dossierOf(graph([display, unitOf({ id: 'c', typeId: 'loud' })], ['a', 'b']), {
      configuration: {
        links: [linkOf('a', 'data', 'b', 'data', { id: 'a-b' }), linkOf('c', 'AUDIO', 'b', 'data', { id: 'c-b' })],
      },
    }),
    types: [source(noSecondTraffic), ...others, { ...talking('loud'), functions: ['active-traffic'] }],
    at,
    subject: 'a-b',
    expect: 'met',
  },
  {
    name: 'a chain whose far half is a wire for audio beside one for position',
    dossier: dossierOf(graph([display, unitOf({ id: 'c', typeId: 'loud' })], ['a', 'b']), {
      configuration: {
        links: [
          linkOf('a', 'data', 'b', 'data', { id: 'a-b' }),
          linkOf('c', 'AUDIO', 'b', 'data', { id: 'c-b' }),
          linkOf('c', 'POS', 'b', 'data', { id: 'c-b-2' }),
        ],
      },
    }),
    types: [source(noSecondTraffic), ...others, { ...talking('loud'), functions: ['active-traffic'] }],
    at,
    subject: 'a-b',
    expect: 'not-met',
  },
  audioToUnknown,
  { name: 'no joints', dossier: graph([]), types: [source(noPortable)], at, expect: 'none' },
  {
    name: 'two limitations, the second of them broken: it is the one that is named',
    dossier: graph([unitOf({ id: 'b', typeId: 'pd' })], ['a', 'b']),
    types: [source(limit({ functions: ['traffic-display'], paragraph: '9.9' }), noPortable), ...others],
    at,
    expect: 'not-met',
    data: { paragraph: '3.7' },
  },
  {
    name: 'of several things forbidden beyond, one is enough',
    dossier: graph([display, traffic], ['a', 'b'], ['c', 'b']),
    types: [
      source(
        limit({ kind: 'no-chain', functions: ['lateral-deviation', 'traffic-display'], beyond: ['active-traffic'] }),
      ),
      ...others,
    ],
    at,
    subject: 'a-b',
    expect: 'not-met',
  },
  {
    name: 'a limitation of another kind forbids no neighbour',
    dossier: graph([unitOf({ id: 'b', typeId: 'pd' })], ['a', 'b']),
    types: [source(limit({ kind: 'not-both', functions: ['portable-display'] })), ...others],
    at,
    expect: 'met',
  },
  {
    name: 'a limitation of another kind forbids no chain',
    dossier: graph([display, traffic], ['a', 'b'], ['c', 'b']),
    types: [source(limit({ kind: 'not-both', functions: ['traffic-display'], beyond: ['active-traffic'] })), ...others],
    at,
    subject: 'c-b',
    expect: 'met',
  },
  {
    name: 'a limitation of another kind forbids no chain, near joint',
    dossier: graph([display, traffic], ['a', 'b'], ['c', 'b']),
    types: [source(limit({ kind: 'not-both', functions: ['traffic-display'], beyond: ['active-traffic'] })), ...others],
    at,
    subject: 'a-b',
    expect: 'met',
    data: { paragraph: null },
  },
  {
    name: 'the joint itself is no chain',
    dossier: graph([unitOf({ id: 'b', typeId: 'td' })], ['a', 'b'], ['b', 'a']),
    types: [source(limit({ kind: 'no-chain', functions: ['traffic-display'], beyond: ['gnss'] })), ...others],
    at,
    subject: 'a-b',
    expect: 'met',
  },
]);
