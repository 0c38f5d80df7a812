import { approvalOf, limitationOf, linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import { approachAnnunciation } from './approach-annunciation.js';

const at = '2026-03-02T14:00Z';
const navigator = typeOf({
  id: 'nx',
  functions: ['gnss', 'approach-annunciation'],
  view: {
    approvedPlaces: ['centre-stack'],
    maxHorizontalDeg: null,
    maxOffsetIn: null,
    document: 'Installation manual nx',
  },
  ports: [
    { name: 'APPR', signal: 'approach-status', direction: 'out', standard: 'discrete', speed: null, requiredFor: [] },
    { name: 'FLAG', signal: 'integrity-flag', direction: 'out', standard: 'discrete', speed: null, requiredFor: [] },
  ],
});
const silent = typeOf({ ...navigator, functions: ['gnss'] });
const forbidden = typeOf({
  ...navigator,
  limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['approach-annunciation'] })],
});
const light = (part: Partial<InstalledUnit> = {}) =>
  unitOf({ id: 'ann1', functions: ['approach-annunciation'], place: 'pilot-panel', ...part });
const panel = (own: Partial<InstalledUnit>, annunciator?: InstalledUnit, port = 'APPR') =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', typeId: 'nx', ...own }), ...(annunciator ? [annunciator] : [])],
      links: annunciator ? [linkOf('gps1', port, 'ann1', port === 'APPR' ? 'approach-status' : 'integrity-flag')] : [],
    },
  });
const away = { place: 'copilot-panel' } as const;
const off = { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true };

testRule(approachAnnunciation, [
  {
    name: 'on its own screen at an approved place',
    dossier: panel({ place: 'centre-stack' }),
    types: [navigator],
    at,
    expect: 'met',
    message: 'shown',
  },
  {
    name: 'on its own screen out of view',
    dossier: panel(away),
    types: [navigator],
    at,
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'its place not recorded',
    dossier: panel({}),
    types: [navigator],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'out of view, repeated by a light', dossier: panel(away, light()), types: [navigator], at, expect: 'met' },
  {
    name: 'the light hears of integrity alone',
    dossier: panel(away, light(), 'FLAG'),
    types: [navigator],
    at,
    expect: 'not-met',
  },
  {
    name: 'the light is deactivated',
    dossier: panel(away, light({ deactivated: off })),
    types: [navigator],
    at,
    expect: 'not-met',
  },
  {
    name: 'the light is a portable device',
    dossier: panel(away, light({ functions: ['approach-annunciation', 'portable-display'] })),
    types: [navigator],
    at,
    expect: 'not-met',
  },
  {
    name: 'its manual lets its screen stand in for no annunciator',
    dossier: panel({ place: 'centre-stack' }),
    types: [forbidden],
    at,
    expect: 'not-met',
  },
  {
    name: 'approved for approaches, says nothing of them',
    dossier: panel({ place: 'centre-stack', approval: approvalOf({ grants: ['approach-lnav'] }) }),
    types: [silent],
    at,
    expect: 'not-met',
  },
  {
    name: 'approved for VFR alone, says nothing of approaches',
    dossier: panel({ approval: approvalOf({ grants: ['vfr-only'] }) }),
    types: [silent],
    at,
    expect: 'none',
  },
  { name: 'deactivated', dossier: panel({ deactivated: off }), types: [navigator], at, expect: 'none' },
  {
    name: 'portable',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'p', functions: ['gnss', 'approach-annunciation', 'portable-display'] })] },
    }),
    at,
    expect: 'none',
  },
]);
