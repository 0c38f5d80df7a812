import type { Facts } from '../../graph/facts.js';
import { fact, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Capability } from '../../verdict/capability.js';
import { cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';

const operations = [
  { id: 'vfr-day', field: 'dayVfr', words: 'Visual flight by day', capability: 'fly' },
  { id: 'vfr-night', field: 'nightVfr', words: 'Visual flight at night', capability: 'night' },
  { id: 'ifr', field: 'ifr', words: 'Instrument flight', capability: 'ifr-aircraft' },
] as const satisfies readonly { id: string; field: string; words: string; capability: Capability }[];

/** One statement each, so that an aircraft without authority for instrument flight still flies by visual rules. */
export const kindOfOperation = defineRule(
  {
    id: 'kind-of-operation',
    topic: 'authority',
    asks: 'The flight manual, placard, kinds-of-operation list or operating limitations allow the kind of operation.',
    binds:
      'Every aircraft; one with an experimental certificate flies visually by day only, unless specifically authorised.',
    sources: [cfr('91.9'), cfr('91.319(d)(2)'), cfr('91.327(d)')],
    messages: {
      allowed: '{operation} is allowed by {document}.',
      forbidden: '{operation} is not allowed by {document}.',
      unclear: 'Whether the aircraft is allowed this is not recorded: {operation}.',
    },
    establishes: ['fly'],
  },
  (facts) =>
    operations.map(({ id, field, words, capability }) => {
      const clause = judge(facts, field);
      return {
        subject: id,
        clause,
        messages: { met: 'allowed', 'not-met': 'forbidden', 'cannot-tell': 'unclear', 'not-applicable': 'allowed' },
        data: { operation: words, document: facts.dossier.configuration.authority?.document.title ?? null },
        effects: [{ stops: 'capability' as const, capability }],
        remedies: [
          { kind: 'do' as const, change: 'authority.set', subject: 'aircraft', facts: [] },
          ...findOut(clause, 'authority.set', 'aircraft'),
        ],
      };
    }),
);

function judge(facts: Facts, field: 'dayVfr' | 'nightVfr' | 'ifr'): Clause {
  const { aircraft, authority } = facts.dossier.configuration;
  const source =
    aircraft.certificate === 'experimental'
      ? cfr('91.319(d)(2)')
      : aircraft.certificate === 'light-sport'
        ? cfr('91.327(d)')
        : cfr('91.9');
  if (authority === null) return unknown('operation-allowed', ['configuration.authority'], { source });
  // Limitations that were read and say nothing give an experimental aircraft no more than day and visual rules.
  if (aircraft.certificate === 'experimental' && field !== 'dayVfr' && authority[field] === null)
    return notMet('specifically-authorised', { source });
  return fact(authority[field], 'operation-allowed', `configuration.authority.${field}`, { source });
}
