import type { Chain } from '../../graph/chains.js';
import type { Facts } from '../../graph/facts.js';
import { anyOf, fact, met, notMet } from '../../verdict/build.js';
import type { Capability } from '../../verdict/capability.js';
import type { Clause } from '../../verdict/clause.js';
import { ac } from '../cite.js';
import { lostThrough } from '../effects.js';
import { joining, noIndicator } from '../no-joint.js';
import { noSubstitute } from '../no-substitute.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'vertical deviation display (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

/** One statement a chain whose source can guide down. LP is lateral alone and asks for none. */
export const verticalIndicator = defineRule(
  {
    id: 'vertical-indicator',
    topic: 'indication',
    asks: 'Each source of vertical guidance is joined to an indicator that shows vertical deviation.',
    binds:
      'Glide slope receivers with a localizer and satellite navigators; one statement for each source and indicator.',
    sources: [source],
    messages: {
      joined: '{source} shows vertical deviation on {indicator}.',
      missing: '{source} shows no vertical deviation there.',
      unclear: 'Whether {source} shows vertical deviation there cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    facts.chains.flatMap((chain) => {
      const costs = guidesDown(chain);
      if (costs.length === 0) return [];
      const clause = judge(facts, chain);
      return [
        {
          subject: chain.id,
          clause,
          messages: { met: 'joined', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'joined' },
          data: { source: chain.source.unit.name, indicator: chain.indicator?.unit.name ?? null },
          effects: lostThrough(chain.id, costs),
          remedies: joining(facts, clause, chain.source.id),
        },
      ];
    }),
);

function guidesDown({ source: { functions } }: Chain): readonly Capability[] {
  return [
    ...(functions.has('loc-receiver') && functions.has('gs-receiver') ? (['approach-ils'] as const) : []),
    ...(functions.has('gnss') ? (['approach-lnav-vnav', 'approach-lpv'] as const) : []),
  ];
}

function judge(facts: Facts, chain: Chain): Clause {
  const elsewhere = noIndicator(facts, chain, 'vertical-deviation', source);
  if (chain.vertical === null) return elsewhere;
  if (chain.indicator !== chain.source)
    return met('vertical-deviation-shown', { source, evidence: chain.vertical.map((link) => link.id) });
  const { type } = chain.source;
  const limit = noSubstitute(chain.source, 'vertical-deviation');
  if (limit !== null)
    return anyOf(
      'vertical-deviation-shown',
      [notMet('own-display-may-stand-in', { source: limit }), elsewhere],
      'cannot-tell',
    );
  // As for lateral deviation: a manual that approves places for the unit's own display approves the display.
  const approved = type !== null && type.view !== null ? true : null;
  return fact(approved, 'own-display-may-stand-in', `catalogue.${chain.source.id}.view`, { source });
}
