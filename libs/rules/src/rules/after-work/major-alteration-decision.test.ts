import { mechanic, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Decision } from '../../dossier/upkeep.js';
import { majorAlterationDecision } from './major-alteration-decision.js';

const released = '2026-02-10T21:00Z';
const form = (part: Partial<NonNullable<Decision['form']>> = {}): Decision['form'] => ({
  executed: '2026-02-10',
  releasedAt: released,
  copySentAt: '2026-02-12T21:00Z',
  ...part,
});
const decision = (part: Partial<Decision> = {}): Decision => ({
  id: 'dec1',
  question: 'major-or-minor',
  subject: 'gps1',
  answer: 'major',
  reasons: 'New antenna through a pressed skin',
  by: mechanic,
  on: '2026-02-01',
  form: form(),
  ...part,
});
const owed = {
  id: 'release-entry:gps1',
  what: 'release-entry' as const,
  subject: 'gps1',
  since: { date: '2026-02-09', at: null },
  becauseOf: 'unit.install',
  touched: null,
  closedBy: null,
};
const of = (...decisions: readonly Decision[]) =>
  dossierOf({
    configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] },
    status: { decisions, obligations: [owed] },
  });
const at = '2026-03-01T12:00Z';
const copy = 'dec1:copy';

// 43.5: the form before the approval for return to service. Part 43 appendix B(a): the copy within 48 hours after it.
testRule(majorAlterationDecision, [
  { name: 'form on the day of the release', dossier: of(decision()), at, expect: 'met', message: 'decided' },
  { name: 'form the day before', dossier: of(decision({ form: form({ executed: '2026-02-09' }) })), at, expect: 'met' },
  {
    name: 'form the day after',
    dossier: of(decision({ form: form({ executed: '2026-02-11' }) })),
    at,
    expect: 'not-met',
    message: 'form-late',
  },
  { name: 'minor: no form', dossier: of(decision({ answer: 'minor', form: null })), at, expect: 'met' },
  { name: 'major, no form', dossier: of(decision({ form: null })), at, expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'day of the form not recorded',
    dossier: of(decision({ form: form({ executed: null }) })),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'release not recorded',
    dossier: of(decision({ form: form({ releasedAt: null }) })),
    at,
    expect: 'cannot-tell',
  },
  { name: 'copy after exactly 48 hours', dossier: of(decision()), at, subject: copy, expect: 'met', message: 'sent' },
  {
    name: 'copy a minute later',
    dossier: of(decision({ form: form({ copySentAt: '2026-02-12T21:01Z' }) })),
    at,
    subject: copy,
    expect: 'not-met',
    message: 'sent-late',
  },
  {
    name: 'copy not recorded',
    dossier: of(decision({ form: form({ copySentAt: null }) })),
    at,
    subject: copy,
    expect: 'cannot-tell',
    message: 'copy-unclear',
  },
  {
    name: 'copy sent, release not recorded',
    dossier: of(decision({ form: form({ releasedAt: null }) })),
    at,
    subject: copy,
    expect: 'cannot-tell',
  },
  { name: 'minor: no copy', dossier: of(decision({ answer: 'minor', form: null })), at, subject: copy, expect: 'none' },
  {
    name: 'release owed and nobody decided',
    dossier: of(),
    at,
    subject: 'gps1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'release owed, and the decision is on another unit',
    dossier: of(decision({ subject: 'com1' })),
    at,
    subject: 'gps1',
    expect: 'cannot-tell',
  },
  {
    name: 'a decision on another question',
    dossier: of(decision({ question: 'compass-authority', answer: 'accepted', form: null })),
    at,
    subject: 'dec1',
    expect: 'none',
  },
  {
    // The base is in Chicago: the day begins at 06:00Z.
    name: 'released in the minute in which the day of the form began',
    dossier: of(decision({ form: form({ releasedAt: '2026-02-10T06:00Z' }) })),
    at,
    expect: 'met',
  },
  {
    name: 'released in the minute before',
    dossier: of(decision({ form: form({ releasedAt: '2026-02-10T05:59Z' }) })),
    at,
    expect: 'not-met',
  },
]);
