import type { Obligation, RecordKind } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { doneAfter } from '../after-work.js';
import { cfr, practice } from '../cite.js';
import type { Owed } from '../owed.js';
import { owedAfterWork } from '../owed.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

const unsaidMeans = practice('what work touched is said by whoever did it; left open it may be anything');

/** What work called for is kept with the change that opened it: a removed unit leaves nothing else to derive it from. */
export const testsAfterChange = defineRule(
  {
    id: 'tests-after-change',
    topic: 'after-work',
    asks: 'What a piece of work touched is said, and each test and entry that it called for was done after the work and counts.',
    binds:
      'Work that opened the static system, touched the altitude chain, a transponder, satellite navigation, ADS-B, the electrical system or the handling; for its release, everything that was fitted, joined, parted, reactivated or taken out and every defect that ended by work. Each costs what needs it; work of which nobody said what it touched may have touched anything.',
    sources: [
      cfr('91.407'),
      cfr('91.405(b)'),
      cfr('91.411(a)(2), (a)(3)'),
      cfr('91.413(b)'),
      ...['gnss-function-check', 'compass-swing', 'ads-b-report'].flatMap((each) =>
        (owedAfterWork[each as keyof typeof owedAfterWork] ?? []).map(({ source }) => source),
      ),
      practice('the test must be later than the work'),
      unsaidMeans,
    ],
    messages: {
      done: '{what} for {subject}: done after the work of {since}.',
      owed: '{what} for {subject}: owed since the work of {since}.',
      unclear: '{what} for {subject}: whether it was done after the work of {since} cannot be told.',
      unsaid: '{subject}: nobody said what the work of {since} touched; it may be anything.',
      'not-asked': '{what} for {subject}: not asked of this flight.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.obligations.flatMap((owed) =>
      owed.what === 'what-was-touched'
        ? [unsaid(owed)]
        : (owedAfterWork[owed.what] ?? []).map((asked) => statement(facts, owed, owed.what as RecordKind, asked)),
    ),
);

/** Behind the panel nobody flies unchecked, and of this work nobody knows that it was not there. */
function unsaid(owed: Obligation): Draft {
  const path = `status.obligations.${owed.id}.touched`;
  return {
    subject: owed.id,
    clause: unknown('what-was-touched', [path], { source: unsaidMeans }),
    messages: { met: 'done', 'not-met': 'owed', 'cannot-tell': 'unsaid', 'not-applicable': 'not-asked' },
    data: { what: owed.what, subject: owed.subject, since: owed.since.date },
    effects: [{ stops: 'capability', capability: 'fly' }, { stops: 'release' }],
    remedies: [findOut('touched.state', owed.id, path)],
  };
}

function statement(facts: Facts, owed: Obligation, what: RecordKind, asked: Owed): Draft {
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
    remedies: [recordIt(what, owed.subject)],
  };
}
