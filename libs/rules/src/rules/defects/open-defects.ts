import type { Defect } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { met, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Outcome } from '../../verdict/clause.js';
import type { Draft, Effect } from '../../verdict/result.js';
import { cfr, practice } from '../cite.js';
import { costsOf } from '../defect-costs.js';
import { deferred } from '../deferral.js';
import { advice } from '../effects.js';
import { findOut, joined, missingNames } from '../gaps.js';
import { defineRule } from '../rule.js';

const repair = cfr('91.405(a), 91.7(a)');
const sorting = practice('a named person decides what kind of defect it is');
const noNews = practice('no entry is no news: only a list that somebody stated complete shows that nothing is open');
const stopsAircraft: readonly Effect[] = [{ stops: 'capability', capability: 'fly' }];

/**
 * An inoperative item stops the aircraft until it is deferred; then it costs only what needs it, in statements of their own.
 * The list of open defects is kept day by day, so its statement of completeness does not grow old.
 */
export const openDefects = defineRule(
  {
    id: 'open-defects',
    topic: 'defects',
    asks: 'No defect is open that stops the aircraft: discrepancies are repaired, inoperative items repaired or deferred by all four parts of 91.213(d) or by a minimum equipment list with its letter.',
    binds: 'Every aircraft; the parts of 91.213(d) are not open to turbine airplanes.',
    sources: [cfr('91.213(a), (d)'), repair, sorting, noNews],
    messages: {
      grounded: 'Inoperative and neither repaired nor fully deferred: {item}.',
      deferred: 'Deferred: {item}.',
      unclear: 'Whether {item} may be deferred cannot be told; not recorded: {unrecorded}.',
      undecided: 'Nobody decided what kind of defect this is: {item}.',
      discrepancy: 'Discrepancy not yet repaired: {item}.',
      wear: 'Wear noted: {item}.',
      lost: 'Inoperative: {item}. What needs it is not available.',
      'stands-in': 'Inoperative: {item}. Something else stands in for it.',
      'not-needed': 'Inoperative: {item}. This flight does not need it.',
      'cost-unclear': 'Inoperative: {item}. Whether this flight needs it cannot be told; not recorded: {unrecorded}.',
      complete: 'The list of open defects was stated complete as of {asOf}.',
      unstated: 'Nobody stated that the list of open defects is complete.',
    },
    establishes: [],
  },
  (facts) => [...facts.dossier.status.defects.flatMap((each) => statements(facts, each)), list(facts)],
);

function statements(facts: Facts, defect: Defect): readonly Draft[] {
  if (defect.decidedBy === null) {
    const path = `status.defects.${defect.id}.decidedBy`;
    const clause = unknown('kind-decided', [path], { source: sorting });
    return [draft(facts, defect, defect.id, clause, same('undecided'), stopsAircraft)];
  }
  if (defect.kind === 'wear')
    return [draft(facts, defect, defect.id, notMet('wear', { source: sorting }), same('wear'), advice)];
  if (defect.kind === 'discrepancy')
    return [
      draft(facts, defect, defect.id, notMet('repaired', { source: repair }), same('discrepancy'), stopsAircraft),
    ];
  const whole = { met: 'deferred', 'not-met': 'grounded', 'cannot-tell': 'unclear', 'not-applicable': 'deferred' };
  const part = { met: 'stands-in', 'not-met': 'lost', 'cannot-tell': 'cost-unclear', 'not-applicable': 'not-needed' };
  return [
    draft(facts, defect, defect.id, deferred(facts, defect), whole, stopsAircraft),
    ...costsOf(facts, defect).map((cost) =>
      draft(facts, defect, `${defect.id}:${cost.of}`, cost.clause, part, cost.effects),
    ),
  ];
}

function draft(
  facts: Facts,
  defect: Defect,
  subject: string,
  clause: Clause,
  messages: Readonly<Record<Outcome, string>>,
  effects: readonly Effect[],
): Draft {
  const name = facts.units.get(defect.subject)?.unit.name ?? joined([defect.subject]);
  return {
    subject,
    clause,
    messages,
    data: { item: name, text: defect.text, unrecorded: missingNames(clause) ?? 'none' },
    effects,
    remedies: [
      { kind: 'do', change: 'defect.close', subject: defect.id, facts: [] },
      // Putting it off lets the aircraft go; what the item was needed for does not come back.
      ...(defect.kind === 'inoperative-item' && subject === defect.id
        ? [{ kind: 'do' as const, change: 'defect.defer', subject: defect.id, facts: [] }]
        : []),
      ...findOut(clause, 'defect.defer', defect.id),
    ],
  };
}

function list(facts: Facts): Draft {
  const stated = facts.complete('defects');
  const clause =
    stated === null
      ? unknown('defect-list-complete', ['status.completeness.defects'], { source: noNews })
      : met('defect-list-complete', { source: noNews });
  return {
    subject: 'defect-list',
    clause,
    messages: { met: 'complete', 'not-met': 'unstated', 'cannot-tell': 'unstated', 'not-applicable': 'complete' },
    data: { asOf: stated?.asOf ?? null },
    effects: stopsAircraft,
    remedies: findOut(clause, 'completeness.state', 'defects'),
  };
}

function same(id: string): Readonly<Record<Outcome, string>> {
  return { met: id, 'not-met': id, 'cannot-tell': id, 'not-applicable': id };
}
