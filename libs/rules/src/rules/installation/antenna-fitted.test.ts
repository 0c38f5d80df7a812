import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { goodDay, trainer, trainerTypes } from '../../../testing/trainer.js';
import type { Antenna } from '../../dossier/installation.js';
import { antennaFitted } from './antenna-fitted.js';

const at = '2026-03-02T14:00Z';
const antenna = (kind: Antenna['kind'], units: readonly string[], approved: boolean | null = true): Antenna => ({
  id: `a-${kind}`,
  kind,
  units,
  approved,
  xIn: null,
  yIn: null,
});
const complete = {
  status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
} as const;
const radio = unitOf({ id: 'nav1', functions: ['com', 'vor-receiver', 'loc-receiver', 'gs-receiver'] });
const access = unitOf({ id: 'uat1', functions: ['ads-b-out-uat'] });
const sbas = typeOf({ id: 'w', functions: ['gnss'], authorisations: [{ tso: 'C146d', class: 'Gamma-3' }] });
const plain = typeOf({ id: 'p', functions: ['gnss'], authorisations: [{ tso: 'C129a', class: 'A1' }] });
const fitted = (units: ReturnType<typeof unitOf>[], antennas: readonly Antenna[]) =>
  dossierOf({ configuration: { units, antennas } });
const gps = (typeId: string | null, antennas: readonly Antenna[]) =>
  fitted([unitOf({ id: 'gps1', typeId, ...(typeId === null ? { functions: ['gnss'] } : {}) })], antennas);

testRule(antennaFitted, [
  {
    name: 'communication antenna',
    dossier: fitted([radio], [antenna('com', ['nav1'])]),
    at,
    subject: 'nav1:com',
    expect: 'met',
    message: 'served',
    data: { antenna: 'a-com' },
  },
  {
    name: 'the communication antenna serves no navigation',
    dossier: fitted([radio], [antenna('com', ['nav1'])]),
    at,
    subject: 'nav1:vor-loc',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'navigation antenna',
    dossier: fitted([radio], [antenna('vor-loc', ['nav1'])]),
    at,
    subject: 'nav1:vor-loc',
    expect: 'met',
  },
  {
    name: 'a receiver of VOR alone needs it too',
    dossier: fitted([unitOf({ id: 'nav2', functions: ['vor-receiver'] })], [antenna('vor-loc', ['nav2'])]),
    at,
    subject: 'nav2:vor-loc',
    expect: 'met',
  },
  {
    name: 'glide slope antenna',
    dossier: fitted([radio], [antenna('glide-slope', ['nav1'])]),
    at,
    subject: 'nav1:glide-slope',
    expect: 'met',
  },
  {
    name: 'one antenna for several bands',
    dossier: fitted([radio], [antenna('combined', ['nav1'])]),
    at,
    subject: 'nav1:glide-slope',
    expect: 'met',
  },
  {
    name: 'antenna of another radio',
    dossier: fitted([radio], [antenna('com', ['com2'])]),
    at,
    subject: 'nav1:com',
    expect: 'cannot-tell',
  },
  {
    name: 'none, and the list was stated complete',
    dossier: dossierOf({ configuration: { units: [radio] } }, complete),
    at,
    subject: 'nav1:com',
    expect: 'not-met',
    message: 'missing',
  },
  { name: 'none recorded', dossier: fitted([radio], []), at, subject: 'nav1:com', expect: 'cannot-tell' },
  {
    name: 'transponder antenna',
    dossier: fitted([unitOf({ id: 'x', functions: ['transponder'] })], [antenna('transponder', ['x'])]),
    at,
    expect: 'met',
  },
  {
    name: 'a unit that sends ADS-B on 1090 MHz alone sends through an antenna too',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'x', functions: ['ads-b-out-1090'] })] } }, complete),
    at,
    subject: 'x:transponder',
    expect: 'not-met',
  },
  {
    name: 'universal access transmitter on its antenna',
    dossier: fitted([access], [antenna('uat', ['uat1'])]),
    at,
    subject: 'uat1:uat',
    expect: 'met',
    data: { antenna: 'a-uat' },
  },
  {
    name: 'universal access transmitter on an antenna for several bands',
    dossier: fitted([access], [antenna('combined', ['uat1'])]),
    at,
    subject: 'uat1:uat',
    expect: 'met',
  },
  {
    name: 'universal access transmitter on the antenna of a transponder',
    dossier: dossierOf(fitted([access], [antenna('transponder', ['uat1'])]), complete),
    at,
    subject: 'uat1:uat',
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'universal access transmitter, no antenna recorded',
    dossier: fitted([access], []),
    at,
    subject: 'uat1:uat',
    expect: 'cannot-tell',
  },
  {
    name: 'distance measuring and audio: no antenna of theirs is known to the record',
    dossier: fitted([unitOf({ id: 'd', functions: ['dme', 'audio'] })], []),
    at,
    expect: 'none',
  },
  {
    name: 'augmented navigator on its antenna',
    dossier: gps('w', [antenna('gnss-sbas', ['gps1'])]),
    types: [sbas],
    at,
    expect: 'met',
  },
  {
    name: 'augmented navigator on a plain antenna',
    dossier: gps('w', [antenna('gnss', ['gps1'])]),
    types: [sbas],
    at,
    expect: 'not-met',
  },
  {
    name: 'augmented navigator on a combined antenna',
    dossier: gps('w', [antenna('combined', ['gps1'])]),
    types: [sbas],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'plain navigator on a plain antenna',
    dossier: gps('p', [antenna('gnss', ['gps1'])]),
    types: [plain],
    at,
    expect: 'met',
  },
  { name: 'not catalogued, plain antenna', dossier: gps(null, [antenna('gnss', ['gps1'])]), at, expect: 'cannot-tell' },
  {
    name: 'antenna not approved for the unit',
    dossier: gps('w', [antenna('gnss-sbas', ['gps1'], false)]),
    types: [sbas],
    at,
    expect: 'not-met',
  },
  {
    name: 'approval of the antenna unknown',
    dossier: gps('w', [antenna('gnss-sbas', ['gps1'], null)]),
    types: [sbas],
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a portable unit carries its own',
    dossier: fitted([unitOf({ id: 'p', functions: ['gnss', 'portable-display'] })], []),
    at,
    expect: 'none',
  },
  {
    name: 'a well-kept trainer',
    dossier: trainer(),
    types: Object.values(trainerTypes),
    at: goodDay,
    expect: 'met',
  },
]);
