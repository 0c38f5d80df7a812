import { linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { goodDay, trainer, trainerTypes } from '../../../testing/trainer.js';
import { requiredPortsJoined } from './required-ports-joined.js';

const at = '2026-03-02T14:00Z';
const navigator = typeOf({
  id: 'nx',
  functions: ['gnss', 'com'],
  ports: [
    {
      name: 'LAT',
      signal: 'lateral-deviation',
      direction: 'out',
      standard: 'analog',
      speed: null,
      requiredFor: ['gnss'],
    },
    {
      name: 'FLAG',
      signal: 'integrity-flag',
      direction: 'out',
      standard: 'discrete',
      speed: null,
      requiredFor: ['gnss'],
    },
    { name: 'PTT', signal: 'control', direction: 'in', standard: 'discrete', speed: null, requiredFor: ['com'] },
    { name: 'SPARE', signal: 'data', direction: 'out', standard: 'rs-232', speed: 9600, requiredFor: [] },
  ],
});
const units = [unitOf({ id: 'gps1', typeId: 'nx' }), unitOf({ id: 'cdi1', functions: ['lateral-deviation'] })];
const joined = (...ports: string[]) =>
  ports.map((port) => (port === 'PTT' ? linkOf('cdi1', 'x', 'gps1', port) : linkOf('gps1', port, 'cdi1', 'x')));
const dossier = (ports: string[], complete = false) =>
  dossierOf(
    { configuration: { units, links: joined(...ports) } },
    complete ? { status: { completeness: [{ list: 'links', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] } } : {},
  );

testRule(requiredPortsJoined, [
  {
    name: 'all joined',
    dossier: dossier(['LAT', 'FLAG']),
    types: [navigator],
    at,
    subject: 'gps1:gnss',
    expect: 'met',
    message: 'joined',
  },
  {
    name: 'one open, list of joints complete',
    dossier: dossier(['LAT'], true),
    types: [navigator],
    at,
    subject: 'gps1:gnss',
    expect: 'not-met',
    message: 'open',
    data: { port: 'FLAG' },
  },
  {
    name: 'one open, list not stated complete',
    dossier: dossier(['LAT']),
    types: [navigator],
    at,
    subject: 'gps1:gnss',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'the open port of one function costs no other',
    dossier: dossier(['LAT', 'PTT'], true),
    types: [navigator],
    at,
    subject: 'gps1:com',
    expect: 'met',
  },
  { name: 'not catalogued: no ports known', dossier: dossier([]), at, expect: 'none' },
  {
    name: 'a well-kept trainer',
    dossier: trainer(),
    types: Object.values(trainerTypes),
    at: goodDay,
    expect: 'met',
  },
  {
    name: 'an indicator whose port for glide slope is open costs what passes it',
    dossier: dossierOf(trainer(), {
      configuration: {
        links: trainer().configuration.links.filter(({ toUnit, toPort }) => toUnit !== 'cdi2' || toPort !== 'VERT'),
      },
    }),
    types: Object.values(trainerTypes).map((type) =>
      type.id === 'di1'
        ? { ...type, ports: type.ports.map((port) => ({ ...port, requiredFor: ['vertical-deviation' as const] })) }
        : type,
    ),
    at: goodDay,
    subject: 'cdi2:vertical-deviation',
    expect: 'not-met',
    data: { port: 'VERT' },
  },
  {
    name: 'ports of the same names of another unit are joined, its own are not',
    dossier: dossierOf(
      {
        configuration: {
          units: [...units, unitOf({ id: 'gps2', typeId: 'nx' })],
          links: [
            linkOf('gps2', 'LAT', 'cdi1', 'x'),
            linkOf('gps2', 'FLAG', 'cdi1', 'y'),
            linkOf('cdi1', 'x', 'gps2', 'LAT'),
            linkOf('cdi1', 'y', 'gps1', 'SPARE'),
          ],
        },
      },
      { status: { completeness: [{ list: 'links', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] } },
    ),
    types: [navigator],
    at,
    subject: 'gps1:gnss',
    expect: 'not-met',
    data: { port: 'LAT' },
  },
]);
