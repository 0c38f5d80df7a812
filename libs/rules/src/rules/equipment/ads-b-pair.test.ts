import { linkOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstalledUnit, Link } from '../../dossier/installation.js';
import type { Identity } from '../../dossier/upkeep.js';
import { adsBPair } from './ads-b-pair.js';

const at = '2026-03-02T14:00Z';
const document = { title: 'Pairing letter 4', revision: 'A', date: '2024-01-10' };
const identityOf = (part: Partial<Identity> = {}): Identity => ({
  id: 'ab',
  address: 'A1B2C3',
  flightId: 'TW01Q',
  emitterCategory: 'light',
  positionUnit: 'gps',
  pairing: document,
  seen: null,
  ...part,
});
const box = unitOf({ id: 'ab', name: 'Box', functions: ['ads-b-out-1090'] });
const navigator = unitOf({ id: 'gps', name: 'Navigator', functions: ['gnss'] });
const off = { deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true } };
const joint = linkOf('gps', 'position', 'ab', 'position');
const of = (
  identity: Partial<Identity> | null,
  units: readonly InstalledUnit[] = [box, navigator],
  links: readonly Link[] = [joint],
  stated = true,
) =>
  dossierOf({
    configuration: { units, links, identities: identity === null ? [] : [identityOf(identity)] },
    status: { completeness: stated ? [{ list: 'links', stated: { asOf: '2026-02-01', by: 'R. Tamsin' } }] : [] },
  });

testRule(adsBPair, [
  {
    name: 'joined, and the document named',
    dossier: of({}),
    at,
    expect: 'met',
    message: 'paired',
    data: { from: 'Navigator' },
  },
  { name: 'no document', dossier: of({ pairing: null }), at, expect: 'cannot-tell', message: 'unclear' },
  { name: 'position source not recorded', dossier: of({ positionUnit: null }), at, expect: 'cannot-tell' },
  {
    name: 'position source out of use',
    dossier: of({}, [box, { ...navigator, ...off }]),
    at,
    expect: 'not-met',
    message: 'apart',
  },
  { name: 'position source taken out', dossier: of({}, [box], []), at, expect: 'not-met' },
  { name: 'not joined, joints stated complete', dossier: of({}, [box, navigator], []), at, expect: 'not-met' },
  {
    name: 'not joined, joints not stated complete',
    dossier: of({}, [box, navigator], [], false),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a joint that names no signal',
    dossier: of({}, [box, navigator], [linkOf('gps', 'J1', 'ab', 'P1')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a receiver of its own',
    dossier: of(
      { positionUnit: 'ab', pairing: null },
      [unitOf({ id: 'ab', functions: ['ads-b-out-1090', 'gnss'] })],
      [],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'recorded as its own source, without a receiver',
    dossier: of({ positionUnit: 'ab', pairing: null }, [box], []),
    at,
    expect: 'not-met',
  },
  {
    name: 'a transmitter on 978 MHz',
    dossier: of({}, [unitOf({ id: 'ab', functions: ['ads-b-out-uat'] }), navigator]),
    at,
    expect: 'met',
  },
  {
    name: 'its source feeds another transmitter, and another source feeds it',
    dossier: of(
      {},
      [
        box,
        navigator,
        unitOf({ id: 'gps2', functions: ['gnss'] }),
        unitOf({ id: 'ab2', functions: ['ads-b-out-uat'] }),
      ],
      [linkOf('gps', 'position', 'ab2', 'position'), linkOf('gps2', 'position', 'ab', 'position')],
    ),
    at,
    subject: 'ab',
    expect: 'not-met',
    message: 'apart',
  },
  {
    name: 'of the second of two transmitters its own is recorded',
    dossier: dossierOf(of(null, [unitOf({ id: 'ab2', functions: ['ads-b-out-uat'] }), box, navigator]), {
      configuration: { identities: [identityOf({ id: 'ab2', positionUnit: null }), identityOf()] },
    }),
    at,
    subject: 'ab',
    expect: 'met',
  },
  { name: 'nothing recorded of what it sends', dossier: of(null), at, expect: 'none' },
  { name: 'a transmitter out of use', dossier: of({}, [{ ...box, ...off }, navigator]), at, expect: 'none' },
]);
