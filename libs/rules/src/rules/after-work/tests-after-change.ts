import type { Obligation } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import type { Draft } from '../../verdict/result.js';
import { doneAfter } from '../after-work.js';
import { cfr, practice } from '../cite.js';
import type { Owed } from '../owed.js';
import { owedAfterWork } from '../owed.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

/** What work called for is kept with the change that opened it: a removed unit leaves nothing else to derive it from. */
export const testsAfterChange = defineRule(
  {
    id: 'tests-after-change',
    topic: 'after-work',
    asks: 'Each test and entry that a piece of work called for was done after the work and counts.',
    binds:
      'Work that opened the static system, touched the altitude chain, a transponder, satellite navigation, ADS-B, the electrical system or the handling, and every installation for its release; each costs what needs it.',
    sources: [
      cfr('91.407'),
      cfr('91.411(a)(2), (a)(3)'),
      cfr('91.413(b)'),
      ...['gnss-function-check', 'compass-swing', 'ads-b-report'].flatMap((each) =>
        (owedAfterWork[each as keyof typeof owedAfterWork] ?? []).map(({ source }) => source),
      ),
      practice('the test must be later than the work'),
    ],
    messages: {
      done: '{what} for {subject}: done after the work of {since}.',
      owed: '{what} for {subject}: owed since the work of {since}.',
      unclear: '{what} for {subject}: whether it was done after the work of {since} cannot be told.',
      'not-asked': '{what} for {subject}: not asked of this flight.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.obligations.flatMap((owed) =>
      (owedAfterWork[owed.what] ?? []).map((asked) => statement(facts, owed, asked)),
    ),
);

function statement(facts: Facts, owed: Obligation, asked: Owed): Draft {
  const work = { since: owed.since, path: `status.obligations.${owed.id}.since.at` };
  const by = asked.by?.(facts, owed);
  const requirement = { ...(by ? { by } : {}), outcomes: ['passed', 'approved'] as const };
  const done = doneAfter(facts, asked.kinds, owed.subject, work, requirement, asked.source, asked.none);
  return {
    subject: `${owed.id}${asked.suffix}`,
    clause: asked.binds ? asked.binds(facts, done) : done,
    messages: { met: 'done', 'not-met': 'owed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
    data: { what: owed.what, subject: owed.subject, since: owed.since.date },
    effects: asked.effects(owed),
    remedies: [recordIt(owed.what, owed.subject)],
  };
}
