import { linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { Link } from '../../dossier/installation.js';
import { signalsCompatible } from './signals-compatible.js';

const at = '2026-03-02T14:00Z';
type Port = EquipmentType['ports'][number];
const port = (part: Partial<Port>): Port => ({
  name: 'P',
  signal: 'position',
  direction: 'out',
  standard: 'rs-232',
  speed: 9600,
  requiredFor: [],
  ...part,
});
const types = (out: Partial<Port>, into: Partial<Port>) => [
  typeOf({ id: 'sends', functions: ['gnss'], ports: [port(out)] }),
  typeOf({ id: 'takes', functions: ['transponder'], ports: [port({ direction: 'in', ...into })] }),
];
const sender = (id: string) => unitOf({ id, typeId: 'sends' });
const taker = (id: string) => unitOf({ id, typeId: 'takes' });
const one = (part: Partial<Link> = {}) =>
  dossierOf({
    configuration: { units: [sender('a'), taker('b')], links: [linkOf('a', 'P', 'b', 'P', { id: 'l', ...part })] },
  });
const asFound = (by: string | null) =>
  ({ by: 'as-found', document: null, acceptedBy: by === null ? null : { asOf: '2024-05-01', by } }) as const;
const bus = { standard: 'arinc-429', speed: 12_500 } as const;
const fan = (receivers: number) => {
  const ids = Array.from({ length: receivers }, (_, index) => `r${String(index).padStart(2, '0')}`);
  return dossierOf({
    configuration: {
      units: [sender('a'), ...ids.map(taker)],
      links: ids.map((id) => linkOf('a', 'P', id, 'P', { id: `l-${id}` })),
    },
  });
};
const two = dossierOf({
  configuration: {
    units: [sender('a'), sender('c'), taker('b')],
    links: [linkOf('a', 'P', 'b', 'P', { id: 'l' }), linkOf('c', 'P', 'b', 'P', { id: 'm' })],
  },
});
/** Two ports of each kind on each side, joined one to one unless said otherwise. */
const twoPorts = (part: Partial<Port> = {}) => [
  typeOf({ id: 'sends', functions: ['gnss'], ports: [port({ name: 'Q', signal: 'heading', ...part }), port(part)] }),
  typeOf({
    id: 'takes',
    functions: ['transponder'],
    ports: [port({ name: 'Q', signal: 'heading', direction: 'in', ...part }), port({ direction: 'in', ...part })],
  }),
];
const sideBySide = dossierOf({
  configuration: {
    units: [sender('a'), taker('b')],
    links: [linkOf('a', 'P', 'b', 'P', { id: 'l' }), linkOf('a', 'Q', 'b', 'Q', { id: 'm' })],
  },
});
const twoBuses = (() => {
  const ids = Array.from({ length: 20 }, (_, index) => `r${String(index).padStart(2, '0')}`);
  return dossierOf({
    configuration: {
      units: [sender('a'), sender('c'), ...ids.map(taker)],
      links: [
        ...ids.map((id) => linkOf('a', 'P', id, 'P', { id: `l-${id}` })),
        linkOf('a', 'Q', 'r00', 'Q', { id: 'm' }),
        linkOf('c', 'P', 'r01', 'Q', { id: 'n' }),
      ],
    },
  });
})();

testRule(signalsCompatible, [
  { name: 'alike', dossier: one(), types: types({}, {}), at, expect: 'met', message: 'agree' },
  {
    name: 'other signal',
    dossier: one(),
    types: types({}, { signal: 'heading' }),
    at,
    expect: 'not-met',
    message: 'disagree',
  },
  { name: 'other standard', dossier: one(), types: types({}, { standard: 'rs-422' }), at, expect: 'not-met' },
  {
    name: 'other standard, whose speed nobody stated: that would settle nothing',
    dossier: one(),
    types: types({ standard: 'arinc-429', speed: 12_500 }, { speed: null }),
    at,
    expect: 'not-met',
  },
  // ARINC 429 knows two speeds: 12 to 14.5 kbit/s and 100 kbit/s.
  ...(
    [
      ['slow at both ends, the slowest and the fastest that is called so', 12_000, 14_500, 'met'],
      ['just below slow at one end', 11_999, 12_500, 'not-met'],
      ['just above slow at one end', 12_500, 14_501, 'not-met'],
      ['slow and fast', 12_500, 100_000, 'not-met'],
      ['fast at both ends, a hundredth apart', 100_000, 101_000, 'met'],
      ['a speed that the standard does not have, at both ends', 9600, 9600, 'cannot-tell'],
      ['two speeds that the standard does not have', 9600, 19_200, 'not-met'],
    ] as const
  ).map(([name, out, into, expect]) => ({
    name: `data bus, ${name}`,
    dossier: one(),
    types: types({ standard: 'arinc-429', speed: out }, { standard: 'arinc-429', speed: into }),
    at,
    expect,
  })),
  { name: 'other speed', dossier: one(), types: types({}, { speed: 38_400 }), at, expect: 'not-met' },
  {
    name: 'speed of one end unknown',
    dossier: one(),
    types: types({}, { speed: null }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'an output joined to an output',
    dossier: one(),
    types: types({}, { direction: 'out' }),
    at,
    expect: 'not-met',
  },
  { name: 'an input joined to an input', dossier: one(), types: types({ direction: 'in' }, {}), at, expect: 'not-met' },
  {
    name: 'ports that do both',
    dossier: one(),
    types: types({ direction: 'both' }, { direction: 'both' }),
    at,
    expect: 'met',
  },
  { name: 'two transmitters on one line', dossier: two, types: types({}, {}), at, subject: 'l', expect: 'not-met' },
  {
    name: 'two switches on one discrete line',
    dossier: two,
    types: types({ standard: 'discrete', speed: null }, { standard: 'discrete', speed: null }),
    at,
    subject: 'l',
    expect: 'met',
  },
  // At most 20 receivers on a bus of ARINC 429: 19, 20, 21.
  { name: '19 receivers', dossier: fan(19), types: types(bus, bus), at, expect: 'met' },
  { name: '20 receivers', dossier: fan(20), types: types(bus, bus), at, expect: 'met' },
  { name: '21 receivers', dossier: fan(21), types: types(bus, bus), at, expect: 'not-met' },
  { name: 'one end not catalogued', dossier: one(), types: types({}, {}).slice(0, 1), at, expect: 'cannot-tell' },
  { name: 'the other end not catalogued', dossier: one(), types: types({}, {}).slice(1), at, expect: 'cannot-tell' },
  {
    name: 'one end not catalogued, and the other is an input',
    dossier: one(),
    types: types({ direction: 'in' }, {}).slice(0, 1),
    at,
    expect: 'not-met',
  },
  { name: 'not catalogued, accepted as found', dossier: one({ cover: asFound('J. Orrell') }), at, expect: 'met' },
  { name: 'as found, accepted by nobody', dossier: one({ cover: asFound(null) }), at, expect: 'cannot-tell' },
  {
    name: 'a planned joint on an approved drawing must still agree',
    dossier: one({
      cover: {
        by: 'installation-approval',
        document: { title: 'Drawing', revision: null, date: null },
        acceptedBy: null,
      },
    }),
    types: types({}, { speed: 38_400 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'two lines into one unit, each to a port of its own',
    dossier: sideBySide,
    types: twoPorts(),
    at,
    subject: 'l',
    expect: 'met',
  },
  {
    name: 'a bus of 20 receivers beside another of the same unit and one of another unit',
    dossier: twoBuses,
    types: twoPorts(bus),
    at,
    subject: 'l-r00',
    expect: 'met',
  },
  {
    name: 'a unit that is in no catalogue on one transmitter line',
    dossier: dossierOf({
      configuration: {
        units: [unitOf({ id: 'a' }), unitOf({ id: 'b' })],
        links: [linkOf('a', 'P', 'b', 'P', { id: 'l' }), linkOf('a', 'Q', 'b', 'P', { id: 'm' })],
      },
    }),
    at,
    subject: 'l',
    expect: 'cannot-tell',
  },
  {
    name: 'speed known at the receiving end alone',
    dossier: one(),
    types: types({ speed: null }, {}),
    at,
    expect: 'cannot-tell',
  },
]);
