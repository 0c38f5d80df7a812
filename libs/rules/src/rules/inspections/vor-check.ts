import { judgeVorCheck } from '../../calculations/vor-check.js';
import type { RecordHead } from '../../dossier/status.js';
import { votBearingsDeg, vorCheckDays } from '../../facts/vor.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, flight, implies, met, notMet, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { unitsWith } from '../altitude-chain.js';
import type { Counted } from '../accomplished.js';
import { accomplished } from '../accomplished.js';
import { cfr } from '../cite.js';
import { countedInDays } from '../day-count.js';
import { endOfDay } from '../periodic.js';
import { findEntry, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { wasUnit } from '../subjects.js';
import { tasks } from '../who-may.js';

const procedure = cfr('91.171(a)(1)');
const written = cfr('91.171(d)');
/** Costs the VOR of the one receiver. Localizer and glide slope are another signal: an ILS is never lost with it. */
export const vorCheck = defineRule(
  {
    id: 'vor-check',
    topic: 'inspections',
    asks: 'Within the preceding 30 days the VOR receiver was checked by a method of the rule, within its limit, with date, place, bearing error and signature; or it is maintained under an approved procedure.',
    binds: 'Each VOR receiver in use under IFR; not localizer and glide slope, and not VFR.',
    sources: [vorCheckDays.source, procedure, cfr('91.171(b), (c)'), votBearingsDeg.source, written],
    messages: {
      current: '{item}: checked, good through {lastGood}.',
      lapsed: '{item}: no check that counts within the preceding 30 days.',
      unclear: '{item}: whether a check counts cannot be told from the record.',
      'not-asked': '{item}: not asked.',
    },
    establishes: ['nav-vor', 'approach-vor'],
  },
  (facts) => unitsWith(facts, 'vor-receiver').map((each) => ofReceiver(facts, each)),
);

function ofReceiver(facts: Facts, unit: UnitFacts): Draft {
  const entries = accomplished(facts, ['vor-check'], unit.id, {
    readings: bearingError,
    also: (record) => (record.outcome === 'approved' ? underProcedure(record) : fields(facts, unit, record)),
  });
  const maintained = entries.filter((each) => each.record.outcome === 'approved');
  // Day D+30 is inside: our reading. A stricter house counts to D+29.
  const checked = countedInDays(
    facts,
    entries.filter((each) => each.record.outcome !== 'approved'),
    vorCheckDays.value,
    {
      what: 'vor-check',
      label: 'within-thirty-days',
      source: vorCheckDays.source,
      none: unknown('vor-check-recorded', ['status.records'], { source: vorCheckDays.source }),
    },
  );
  const clause =
    maintained.length === 0
      ? checked.clause
      : anyOf(
          'maintained-or-checked',
          [...maintained.map((each) => throughItsDay(facts, each)), ...(checked.governing ? [checked.clause] : [])],
          'cannot-tell',
        );
  const inUse = unit.active ? met('in-use', { source: procedure }) : notMet('in-use', { source: procedure });
  return {
    subject: unit.id,
    clause: implies(inUse, implies(flight('under-ifr', { rules: 'ifr' }, { source: cfr('91.171(a)') }), clause)),
    messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
    data: { item: unit.unit.name, lastGood: checked.lastGood ?? maintained[0]?.record.expires ?? null },
    effects: [
      { stops: 'capability', capability: 'nav-vor', through: unit.id },
      { stops: 'capability', capability: 'approach-vor', through: unit.id },
    ],
    due: checked.due,
    remedies: [recordIt('vor-check', unit.id), ...(entries.length === 0 ? [findEntry('vor-check', unit.id)] : [])],
  };
}

/** An entry of the approved procedure has no bearing to judge. */
function bearingError(record: RecordHead) {
  if (record.outcome === 'approved') return { outcome: 'met' as const, source: procedure };
  const vor = record.readings?.vor ?? null;
  if (vor === null) return null;
  const { outcome, points } = judgeVorCheck(vor);
  return { outcome, source: points[0]?.source ?? written };
}

/** Date and error stand elsewhere in the entry; place and signature here. */
function fields(facts: Facts, unit: UnitFacts, record: RecordHead): readonly Clause[] {
  const path = `status.records.${record.id}`;
  const extra = { source: written, evidence: [record.id] };
  return [
    fact(record.place === null ? null : true, 'place-recorded', `${path}.place`, extra),
    fact(record.agency === null ? null : true, 'signature-recorded', `${path}.agency`, extra),
    ...(record.readings?.vor?.method === 'dual' ? [twoReceivers(facts, unit, record)] : []),
  ];
}

/** A dual check compares two receivers of this aircraft; one that has since been taken out was one of them. */
function twoReceivers(facts: Facts, unit: UnitFacts, record: RecordHead): Clause {
  const extra = { source: cfr('91.171(c)'), evidence: [record.id] };
  const others = record.subjects.filter((each) => each !== unit.id);
  if (others.length === 0) return unknown('other-receiver-recorded', [`status.records.${record.id}.subjects`], extra);
  const receiver = others.some((each) => facts.units.get(each)?.functions.has('vor-receiver') ?? wasUnit(facts, each));
  return receiver ? met('two-receivers-of-the-aircraft', extra) : notMet('two-receivers-of-the-aircraft', extra);
}

function underProcedure(record: RecordHead): readonly Clause[] {
  const path = `status.records.${record.id}`;
  const extra = { source: procedure, evidence: [record.id] };
  const { agency } = record;
  return [
    fact(record.document === null ? null : true, 'approved-procedure-named', `${path}.document`, extra),
    fact(agency === null ? null : tasks.maintenance.may(agency), 'signer-allowed', `${path}.agency`, extra),
  ];
}

/** The procedure sets its own interval; the entry says through which day. */
function throughItsDay(facts: Facts, { record, clause }: Counted): Clause {
  const extra = { source: procedure, evidence: [record.id] };
  const region =
    record.expires === null
      ? unknown('within-interval-of-procedure', [`status.records.${record.id}.expires`], extra)
      : within('within-interval-of-procedure', { before: endOfDay(facts, record.expires) }, extra);
  return allOf('done-and-current', [clause, region], 'cannot-tell');
}
