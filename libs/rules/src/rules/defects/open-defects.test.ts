import { deferralOf, linkOf, mechanic, pilot, unitOf } from '../../../testing/builders.js';
import type { Part } from '../../../testing/dossiers.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { Defect, Deferral } from '../../dossier/status.js';
import { openDefects } from './open-defects.js';

const at = '2026-03-02T14:00Z';
const deferral = (part: Partial<Deferral> = {}): Deferral => deferralOf({ on: '2026-03-01', ...part });
const defect = (part: Partial<Defect> = {}): Defect => ({
  id: 'd1',
  kind: 'inoperative-item',
  subject: 'nav1',
  text: 'Flag stays in view on every frequency.',
  raised: { date: '2026-03-01', at: null },
  decidedBy: mechanic,
  deferral: deferral(),
  ...part,
});
const trainer: Part<Dossier> = {
  configuration: {
    aircraft: {
      certificate: 'standard',
      engine: 'reciprocating',
      maxWeightLb: 2300,
      manufactured: '1979-05-04',
      basis: { code: 'car-3', amendment: null },
    },
    units: [
      unitOf({ id: 'nav1', name: 'NAV 1', functions: ['vor-receiver', 'com'] }),
      unitOf({ id: 'cdi1', functions: ['lateral-deviation'] }),
      unitOf({ id: 'fan', name: 'Cabin fan', functions: ['other'] }),
    ],
    links: [linkOf('nav1', 'lateral-deviation', 'cdi1', 'lateral-deviation')],
  },
};
const with_ = (part: Partial<Defect>, more: Part<Dossier> = {}) => ({
  dossier: dossierOf(trainer, { status: { defects: [defect(part)] } }, more),
  at,
  subject: 'd1',
});
const deferredWith = (part: Partial<Deferral>) => with_({ deferral: deferral(part) });
const aircraft = (part: Partial<Aircraft>): Part<Dossier> => ({ configuration: { aircraft: part } });
const mel = (part: Partial<Deferral> = {}) =>
  deferredWith({ route: 'mel', notRequired: null, noHazardBy: null, letterAboard: true, ...part });

testRule(openDefects, [
  // 91.213(a), (d): all four parts.
  { name: 'inoperative, not deferred', ...with_({ deferral: null }), expect: 'not-met', message: 'grounded' },
  { name: 'all four parts done', ...with_({}), expect: 'met', message: 'deferred', data: { item: 'NAV 1' } },
  { name: '(d)(2) item is required', ...deferredWith({ notRequired: false }), expect: 'not-met' },
  { name: '(d)(2) not recorded', ...deferredWith({ notRequired: null }), expect: 'cannot-tell', message: 'unclear' },
  { name: '(d)(3) not secured', ...deferredWith({ secured: false }), expect: 'not-met' },
  { name: '(d)(3) secured not recorded', ...deferredWith({ secured: null }), expect: 'cannot-tell' },
  { name: '(d)(3) no placard', ...deferredWith({ placarded: false }), expect: 'not-met' },
  { name: '(d)(3) placard not recorded', ...deferredWith({ placarded: null }), expect: 'cannot-tell' },
  { name: '(d)(3) no entry', ...deferredWith({ recorded: false }), expect: 'not-met' },
  { name: '(d)(3) entry not recorded', ...deferredWith({ recorded: null }), expect: 'cannot-tell' },
  { name: '(d)(4) nobody looked for a hazard', ...deferredWith({ noHazardBy: null }), expect: 'cannot-tell' },
  { name: '(d)(4) a rated pilot did', ...deferredWith({ noHazardBy: pilot }), expect: 'met' },
  {
    name: '(d)(4) a pilot without a rating did',
    ...deferredWith({ noHazardBy: { ...pilot, ratings: [] } }),
    expect: 'not-met',
  },
  {
    name: '(d)(4) a pilot of unrecorded ratings did',
    ...deferredWith({ noHazardBy: { ...pilot, ratings: null } }),
    expect: 'cannot-tell',
  },
  // (d)(1): class of aircraft.
  { name: '(d)(1) turboprop airplane', ...with_({}, aircraft({ engine: 'turboprop' })), expect: 'not-met' },
  { name: '(d)(1) engine not recorded', ...with_({}, aircraft({ engine: null })), expect: 'cannot-tell' },
  {
    name: '(d)(1) turbine helicopter',
    ...with_({}, aircraft({ kind: 'helicopter', engine: 'turboshaft' })),
    expect: 'met',
  },
  { name: '(d)(1) glider', ...with_({}, aircraft({ kind: 'glider', engine: 'none' })), expect: 'met' },
  { name: '(d)(1) another class', ...with_({}, aircraft({ kind: 'other' })), expect: 'cannot-tell' },
  { name: '(d)(1) 12,500 lb', ...with_({}, aircraft({ maxWeightLb: 12_500 })), expect: 'met' },
  { name: '(d)(1) 12,501 lb', ...with_({}, aircraft({ maxWeightLb: 12_501 })), expect: 'cannot-tell' },
  { name: '(d)(1) weight not recorded', ...with_({}, aircraft({ maxWeightLb: null })), expect: 'cannot-tell' },
  // 91.213(a): minimum equipment list with its letter.
  { name: 'list and letter aboard', ...mel(), expect: 'met' },
  { name: 'list, letter not recorded', ...mel({ letterAboard: null }), expect: 'cannot-tell' },
  { name: 'list, no letter', ...mel({ letterAboard: false }), expect: 'not-met' },
  { name: 'list, no placard', ...mel({ placarded: false }), expect: 'not-met' },
  {
    name: 'list on a turboprop airplane',
    ...with_({ deferral: deferral({ route: 'mel', letterAboard: true }) }, aircraft({ engine: 'turboprop' })),
    expect: 'met',
  },
  // Kinds.
  {
    name: 'kind decided by nobody',
    ...with_({ decidedBy: null, deferral: null }),
    expect: 'cannot-tell',
    message: 'undecided',
  },
  { name: 'wear decided by nobody', ...with_({ kind: 'wear', decidedBy: null }), expect: 'cannot-tell' },
  {
    name: 'discrepancy',
    ...with_({ kind: 'discrepancy', deferral: null }),
    expect: 'not-met',
    message: 'discrepancy',
  },
  { name: 'a discrepancy cannot be deferred', ...with_({ kind: 'discrepancy' }), expect: 'not-met' },
  { name: 'wear', ...with_({ kind: 'wear', deferral: null }), expect: 'not-met', message: 'wear' },
  // What it costs, deferred or not.
  { name: 'costs what goes through the unit', ...with_({}), subject: 'd1:unit', expect: 'not-met', message: 'lost' },
  {
    name: 'costs it undeferred too',
    ...with_({ deferral: null }),
    subject: 'd1:unit',
    expect: 'not-met',
  },
  {
    name: 'an item that nothing goes through costs nothing more',
    ...with_({ subject: 'fan' }),
    subject: 'd1:unit',
    expect: 'none',
  },
  {
    name: 'an item that nothing goes through is deferred and flies',
    ...with_({ subject: 'fan' }),
    expect: 'met',
  },
  {
    name: 'a day item is needed by every flight, whatever the entry claims',
    ...with_({ subject: 'tachometer' }),
    subject: 'd1:tachometer:fly',
    flight: { rules: 'vfr', light: 'day', purpose: 'private' },
    expect: 'not-met',
  },
  {
    name: 'a day item on an experimental aircraft',
    ...with_({ subject: 'tachometer' }, aircraft({ certificate: 'experimental' })),
    subject: 'd1:tachometer:fly',
    expect: 'not-applicable',
    message: 'not-needed',
  },
  {
    name: 'a day item, certificate not recorded',
    ...with_({ subject: 'tachometer' }, aircraft({ certificate: null })),
    subject: 'd1:tachometer:fly',
    expect: 'cannot-tell',
    message: 'cost-unclear',
  },
  {
    name: 'landing light on a flight for hire',
    ...with_({ subject: 'landing-light' }),
    subject: 'd1:landing-light:night',
    flight: { purpose: 'carriage-for-hire' },
    expect: 'not-met',
  },
  {
    name: 'landing light on a private flight',
    ...with_({ subject: 'landing-light' }),
    subject: 'd1:landing-light:night',
    flight: { purpose: 'private' },
    expect: 'not-applicable',
  },
  {
    name: 'anticollision lights by day on an old airplane',
    ...with_({ subject: 'anticollision-lights' }),
    subject: 'd1:anticollision-lights:fly',
    expect: 'not-applicable',
  },
  {
    name: 'anticollision lights at night on an old airplane',
    ...with_({ subject: 'anticollision-lights' }),
    subject: 'd1:anticollision-lights:night',
    expect: 'not-met',
  },
  {
    name: 'a clock costs instrument flight',
    ...with_({ subject: 'clock' }),
    subject: 'd1:clock:ifr-aircraft',
    expect: 'not-met',
  },
  {
    name: 'a clock does not cost visual flight',
    ...with_({ subject: 'clock' }),
    subject: 'd1:clock:fly',
    expect: 'none',
  },
  {
    name: 'attitude indicator, and a portable device that shows attitude',
    ...with_(
      { subject: 'horizon' },
      {
        configuration: {
          units: [
            unitOf({ id: 'horizon', functions: ['attitude'] }),
            unitOf({ id: 'tablet', functions: ['attitude', 'portable-display'] }),
          ],
        },
      },
    ),
    subject: 'd1:pitch-and-bank:ifr-aircraft',
    expect: 'not-met',
    message: 'lost',
  },
  {
    name: 'attitude indicator, and a second one',
    ...with_(
      { subject: 'horizon' },
      {
        configuration: {
          units: [
            unitOf({ id: 'horizon', functions: ['attitude'] }),
            unitOf({ id: 'second', functions: ['attitude'] }),
          ],
        },
      },
    ),
    subject: 'd1:pitch-and-bank:ifr-aircraft',
    expect: 'none',
  },
  {
    name: 'the portable device itself',
    ...with_(
      { subject: 'tablet' },
      { configuration: { units: [unitOf({ id: 'tablet', functions: ['attitude', 'portable-display'] })] } },
    ),
    subject: 'd1:pitch-and-bank:ifr-aircraft',
    expect: 'none',
  },
  {
    name: 'rate of turn, third attitude system fitted',
    ...with_({ subject: 'rate-of-turn' }, { configuration: { equipment: itemsOf(['third-attitude']) } }),
    subject: 'd1:rate-of-turn:ifr-aircraft',
    expect: 'met',
    message: 'stands-in',
  },
  {
    name: 'third attitude system, rate of turn fitted',
    ...with_({ subject: 'third-attitude' }, { configuration: { equipment: itemsOf(['rate-of-turn']) } }),
    subject: 'd1:third-attitude:ifr-aircraft',
    expect: 'met',
  },
  {
    name: 'rate of turn, no third attitude system',
    ...with_(
      { subject: 'rate-of-turn' },
      { configuration: { equipment: itemsOf(['third-attitude'], { state: 'absent' }) } },
    ),
    subject: 'd1:rate-of-turn:ifr-aircraft',
    expect: 'not-met',
  },
  {
    name: 'rate of turn and third attitude system both inoperative',
    dossier: dossierOf(trainer, {
      configuration: { equipment: itemsOf(['third-attitude', 'rate-of-turn']) },
      status: { defects: [defect({ subject: 'rate-of-turn' }), defect({ id: 'd2', subject: 'third-attitude' })] },
    }),
    at,
    subject: 'd2:third-attitude:ifr-aircraft',
    expect: 'not-met',
  },
  {
    name: 'DME at 23,999 ft',
    ...with_({ subject: 'dme-or-rnav' }),
    subject: 'd1:dme-or-rnav:ifr-aircraft',
    flight: { topFt: 23_999 },
    capabilities: { 'nav-gnss': 'not-met' },
    expect: 'not-applicable',
  },
  {
    name: 'DME at 24,000 ft without GNSS',
    ...with_({ subject: 'dme-or-rnav' }),
    subject: 'd1:dme-or-rnav:ifr-aircraft',
    flight: { topFt: 24_000 },
    capabilities: { 'nav-gnss': 'not-met' },
    expect: 'not-met',
  },
  {
    name: 'DME at 24,000 ft with GNSS',
    ...with_({ subject: 'dme-or-rnav' }),
    subject: 'd1:dme-or-rnav:ifr-aircraft',
    flight: { topFt: 24_000 },
    capabilities: { 'nav-gnss': 'met' },
    expect: 'met',
  },
  {
    name: 'the only altimeter is a day item',
    ...with_({ subject: 'alt1' }, { configuration: { units: [unitOf({ id: 'alt1', functions: ['altimeter'] })] } }),
    subject: 'd1:altimeter:fly',
    expect: 'not-met',
  },
  {
    name: 'a second altimeter stays',
    ...with_(
      { subject: 'alt1' },
      {
        configuration: {
          units: [unitOf({ id: 'alt1', functions: ['altimeter'] }), unitOf({ id: 'alt2', functions: ['altimeter'] })],
        },
      },
    ),
    subject: 'd1:altimeter:fly',
    expect: 'none',
  },
  {
    name: 'a second altimeter stays, though it shows wear',
    dossier: dossierOf(trainer, {
      configuration: { units: ['alt1', 'alt2'].map((id) => unitOf({ id, functions: ['altimeter'] })) },
      status: { defects: [defect({ subject: 'alt1' }), defect({ id: 'd2', subject: 'alt2', kind: 'wear' })] },
    }),
    at,
    subject: 'd1:altimeter:fly',
    expect: 'none',
  },
  {
    name: 'both altimeters are inoperative',
    dossier: dossierOf(trainer, {
      configuration: { units: ['alt1', 'alt2'].map((id) => unitOf({ id, functions: ['altimeter'] })) },
      status: { defects: [defect({ subject: 'alt1' }), defect({ id: 'd2', subject: 'alt2' })] },
    }),
    at,
    subject: 'd1:altimeter:fly',
    expect: 'not-met',
  },
  // The list: no entry is no news.
  {
    name: 'no defect, list stated complete',
    dossier: dossierOf({
      status: { completeness: [{ list: 'defects', stated: { asOf: '2025-09-10', by: 'R. Tamsin' } }] },
    }),
    at,
    subject: 'defect-list',
    expect: 'met',
    message: 'complete',
  },
  {
    name: 'no defect recorded, list not stated complete',
    dossier: dossierOf(),
    at,
    subject: 'defect-list',
    expect: 'cannot-tell',
    message: 'unstated',
  },
]);
