import { calendarMonths } from '../../facts/intervals.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import { implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { cfr, maker } from '../cite.js';
import { calendarMonthsFromDone, recurring } from '../recurring.js';
import { findEntry, findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const lightSport = calendarMonths.lightSportCondition;
const notInTheRule = cfr('91.319(i)');

/** An experimental aircraft's interval stands in its own operating limitations and nowhere else: not recorded, no default. */
export const conditionInspection = defineRule(
  {
    id: 'condition-inspection',
    topic: 'inspections',
    asks: 'Within the interval of its operating limitations, or for light-sport aircraft within 12 calendar months, a condition inspection.',
    binds: 'Experimental and light-sport aircraft; not aircraft that are under 91.409(a).',
    sources: [lightSport.source, cfr('91.409(c)(1)'), notInTheRule, tasks.lightSportInspection.source],
    messages: {
      current: 'Condition inspection of {done}, good through {lastGood}.',
      lapsed: 'No condition inspection that counts within {months} calendar months.',
      unclear:
        'Whether a condition inspection counts cannot be told: its interval or its entry is not recorded in full.',
      'not-asked': 'No condition inspection binds this aircraft.',
    },
    establishes: [],
  },
  (facts) => {
    const binds = bindsCondition(facts);
    const { months, source } = intervalOf(facts);
    const entries = accomplished(facts, ['condition-inspection'], 'aircraft', {
      by:
        facts.dossier.configuration.aircraft.certificate === 'light-sport'
          ? tasks.lightSportInspection
          : tasks.experimentalInspection,
    });
    const none = unknown('condition-inspection-recorded', ['status.records'], { source });
    const asked = { what: 'condition-inspection', label: 'within-calendar-months', source, none };
    const found = months === null ? null : recurring(facts, entries, calendarMonthsFromDone(months), asked);
    const path = 'configuration.authority.conditionInspectionMonths';
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(binds, found?.clause ?? unknown('interval-recorded', [path], { source })),
      messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
      data: { done: found?.governing?.done.date ?? null, lastGood: found?.lastGood ?? null, months },
      effects: [{ stops: 'capability', capability: 'fly' }],
      due: binds.inside === 'not-met' ? [] : (found?.due ?? []),
      remedies: [
        recordIt('condition-inspection'),
        ...(months === null ? [findOut('authority.set', 'aircraft', path)] : []),
        ...(entries.length === 0 ? [findEntry('condition-inspection')] : []),
      ],
    };
    return [draft];
  },
);

function intervalOf(facts: Facts): { readonly months: number | null; readonly source: SourceRef } {
  const { aircraft, authority } = facts.dossier.configuration;
  if (aircraft.certificate === 'light-sport') return { months: lightSport.value, source: lightSport.source };
  if (authority?.conditionInspectionMonths == null) return { months: null, source: notInTheRule };
  const { conditionInspectionMonths: own } = authority;
  const source = maker(authority.document.title, 'condition inspection');
  // Certificate not recorded: what satisfies both texts.
  return { months: aircraft.certificate === null ? Math.min(own, lightSport.value) : own, source };
}

function bindsCondition(facts: Facts): Leaf {
  const { certificate } = facts.dossier.configuration.aircraft;
  const extra = { source: cfr('91.409(c)(1)') };
  if (certificate === null)
    return unknown('experimental-or-light-sport', ['configuration.aircraft.certificate'], extra);
  const bound = certificate === 'experimental' || certificate === 'light-sport';
  return bound ? met('experimental-or-light-sport', extra) : notMet('experimental-or-light-sport', extra);
}
