import { linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { goodDay, trainer, trainerTypes } from '../../../testing/trainer.js';
import type { Link } from '../../dossier/installation.js';
import { linkApproved } from './link-approved.js';

const at = '2026-03-02T14:00Z';
const port = (name: string, signal: 'lateral-deviation' | 'power', direction: 'in' | 'out') =>
  ({ name, signal, direction, standard: 'analog', speed: null, requiredFor: [] }) as const;
const pair = (software: string | null) => ({
  family: 'di2',
  signals: ['lateral-deviation' as const],
  software,
  document: 'Installation manual nx',
  revision: 'B',
});
const navigator = (software: string | null, listed = true) =>
  typeOf({
    id: 'nx',
    functions: ['gnss'],
    ports: [port('LAT', 'lateral-deviation', 'out'), port('PWR', 'power', 'out')],
    pairs: listed ? [pair(software)] : [],
  });
const indicator = typeOf({
  id: 'di2',
  functions: ['lateral-deviation'],
  ports: [port('IN', 'lateral-deviation', 'in')],
});
const joined = (part: Partial<Link> = {}, software: string | null = null, from = 'LAT') =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', typeId: 'nx', software }), unitOf({ id: 'cdi1', typeId: 'di2' })],
      links: [linkOf('gps1', from, 'cdi1', 'IN', { id: 'l1', ...part })],
    },
  });
const uncatalogued = (cover: Link['cover']) =>
  dossierOf({
    configuration: {
      units: [
        unitOf({ id: 'nav1', functions: ['vor-receiver'] }),
        unitOf({ id: 'cdi1', functions: ['lateral-deviation'] }),
      ],
      links: [linkOf('nav1', 'lateral-deviation', 'cdi1', 'lateral-deviation', { id: 'l1', cover })],
    },
  });
const byPerson = { asOf: '2024-05-01', by: 'J. Orrell' };
const drawing = { title: 'Interconnect drawing', revision: 'C', date: '2024-01-10' };

testRule(linkApproved, [
  {
    name: 'on the list at any software',
    dossier: joined(),
    types: [navigator(null), indicator],
    at,
    expect: 'met',
    message: 'approved',
    data: { signal: 'lateral-deviation' },
  },
  {
    name: 'on the list at this software',
    dossier: joined({}, '3.1'),
    types: [navigator('3.1'), indicator],
    at,
    expect: 'met',
  },
  {
    name: 'on the list at other software',
    dossier: joined({}, '3.0'),
    types: [navigator('3.1'), indicator],
    at,
    expect: 'not-met',
    message: 'not-approved',
  },
  {
    name: 'software not recorded',
    dossier: joined(),
    types: [navigator('3.1'), indicator],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'both manuals silent: silence approves nothing',
    dossier: joined(),
    types: [navigator(null, false), indicator],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'the other manual lists it',
    dossier: joined(),
    types: [navigator(null, false), typeOf({ ...indicator, pairs: [{ ...pair(null), family: 'nx' }] })],
    at,
    expect: 'met',
  },
  {
    name: 'the list names the pair for another signal',
    dossier: joined(),
    types: [typeOf({ ...navigator(null), pairs: [{ ...pair(null), signals: ['position'] }] }), indicator],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'other software, but covered by the approval of this installation',
    dossier: joined({ cover: { by: 'installation-approval', document: drawing, acceptedBy: null } }, '3.0'),
    types: [navigator('3.1'), indicator],
    at,
    expect: 'met',
  },
  {
    name: 'covered, but the document is not named',
    dossier: joined({ cover: { by: 'installation-approval', document: null, acceptedBy: null } }),
    types: [navigator(null, false), indicator],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'covered by a document whose revision is not recorded',
    dossier: joined({
      cover: { by: 'installation-approval', document: { ...drawing, revision: null }, acceptedBy: null },
    }),
    types: [navigator(null, false), indicator],
    at,
    expect: 'met',
  },
  {
    name: 'the list names another indicator for this signal',
    dossier: joined(),
    types: [typeOf({ ...navigator(null), pairs: [{ ...pair(null), family: 'di9' }] }), indicator],
    at,
    expect: 'cannot-tell',
  },
  { name: 'forty years old and in no catalogue', dossier: uncatalogued(null), at, expect: 'cannot-tell' },
  {
    name: 'accepted as found by a named person',
    dossier: uncatalogued({ by: 'as-found', document: null, acceptedBy: byPerson }),
    at,
    expect: 'met',
  },
  {
    name: 'as found, accepted by nobody',
    dossier: uncatalogued({ by: 'as-found', document: drawing, acceptedBy: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'a power wire', dossier: joined({}, null, 'PWR'), types: [navigator(null), indicator], at, expect: 'none' },
  {
    name: 'a well-kept trainer',
    dossier: trainer(),
    types: Object.values(trainerTypes),
    at: goodDay,
    expect: 'met',
  },
]);
