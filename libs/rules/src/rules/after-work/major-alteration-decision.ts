import type { Decision } from '../../dossier/upkeep.js';
import { alterationFormHours } from '../../facts/intervals.js';
import type { Facts } from '../../graph/facts.js';
import { instantOf, minutesOf } from '../../time/instant.js';
import { startOfDay } from '../../time/zones.js';
import { allOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { releaseOwed } from '../release-owed.js';
import { defineRule } from '../rule.js';

const definition = cfr('1.1, 43 appendix A(a)');
const form = cfr('43.5');

/** Major or minor is never computed: a named person decides, with reasons. What a major one then calls for is judged. */
export const majorAlterationDecision = defineRule(
  {
    id: 'major-alteration-decision',
    topic: 'after-work',
    asks: 'A named person decided whether an alteration is major; for a major one the form is executed before the release and its copy sent within 48 hours after it.',
    binds:
      'Installations whose release is owed, and every decision on record; the form holds up the release, the copy is a matter of record.',
    sources: [definition, form, alterationFormHours.source],
    messages: {
      decided: '{subject}: decided as {answer} by {by}, and what follows from it is done.',
      'form-late': '{subject}: major, and the form was not executed before the release.',
      unclear: '{subject}: whether it is a major alteration was decided by nobody, or its form is not recorded.',
      sent: '{subject}: the copy of the form was sent within 48 hours of the release.',
      'sent-late': '{subject}: the copy of the form was not sent within 48 hours of the release.',
      'copy-unclear': '{subject}: when the copy of the form was sent, or when the release was, is not recorded.',
    },
    establishes: [],
  },
  (facts) => {
    const decisions = facts.dossier.status.decisions.filter((each) => each.question === 'major-or-minor');
    const undecided = releaseOwed(facts).filter((id) => !decisions.some((each) => each.subject === id));
    return [
      ...decisions.flatMap((each) => [decided(facts, each), ...copy(facts, each)]),
      ...undecided.map((id) => open(facts, id)),
    ];
  },
);

const nameOf = (facts: Facts, id: string) => facts.units.get(id)?.unit.name ?? id;

function decided(facts: Facts, decision: Decision): Draft {
  const path = `status.decisions.${decision.id}.form`;
  const clause = decision.answer === 'major' ? executed(facts, decision, path) : met('decided', { source: definition });
  return {
    subject: decision.id,
    clause,
    messages: { met: 'decided', 'not-met': 'form-late', 'cannot-tell': 'unclear', 'not-applicable': 'decided' },
    data: { subject: nameOf(facts, decision.subject), answer: decision.answer, by: decision.by.name },
    effects: [{ stops: 'release' }],
    remedies: [
      { kind: 'do', change: 'decision.record', subject: decision.subject, facts: [] },
      ...findOut(clause, 'decision.record', decision.subject),
    ],
  };
}

/** On the day of the release counts as before it: the form carries no time. */
function executed(facts: Facts, { form: paper }: Decision, path: string): Clause {
  const { executed: day, releasedAt } = paper ?? { executed: null, releasedAt: null };
  if (day === null) return unknown('form-executed', [paper === null ? path : `${path}.executed`], { source: form });
  const before = releasedAt === null ? null : startOfDay(day, facts.zone) <= releasedAt;
  return fact(before, 'form-before-release', `${path}.releasedAt`, { source: form });
}

function copy(facts: Facts, decision: Decision): readonly Draft[] {
  if (decision.answer !== 'major') return [];
  const { releasedAt, copySentAt } = decision.form ?? { releasedAt: null, copySentAt: null };
  const path = `status.decisions.${decision.id}.form`;
  const limit = releasedAt === null ? null : instantOf(minutesOf(releasedAt) + alterationFormHours.value * 60);
  const clause = allOf(
    'copy-sent',
    [
      fact(
        limit === null || copySentAt === null ? null : copySentAt <= limit,
        'copy-within-48-hours',
        `${path}.${releasedAt === null ? 'releasedAt' : 'copySentAt'}`,
        {
          source: alterationFormHours.source,
          limit: { amount: alterationFormHours.value, unit: 'h' },
        },
      ),
    ],
    'cannot-tell',
  );
  return [
    {
      subject: `${decision.id}:copy`,
      clause,
      messages: { met: 'sent', 'not-met': 'sent-late', 'cannot-tell': 'copy-unclear', 'not-applicable': 'sent' },
      data: { subject: nameOf(facts, decision.subject), answer: decision.answer, by: decision.by.name },
      effects: [{ stops: 'nothing', kind: 'record' }],
      remedies: [{ kind: 'do', change: 'decision.record', subject: decision.subject, facts: [] }],
    },
  ];
}

function open(facts: Facts, unitId: string): Draft {
  const clause = unknown('decided-by-a-named-person', ['status.decisions'], { source: definition });
  return {
    subject: unitId,
    clause,
    messages: { met: 'decided', 'not-met': 'form-late', 'cannot-tell': 'unclear', 'not-applicable': 'decided' },
    data: { subject: nameOf(facts, unitId), answer: null, by: null },
    effects: [{ stops: 'release' }],
    remedies: [{ kind: 'do', change: 'decision.record', subject: unitId, facts: [] }],
  };
}
