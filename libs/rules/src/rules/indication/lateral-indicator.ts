import type { Facts } from '../../graph/facts.js';
import { anyOf, fact, met, notMet } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Chain } from '../../graph/chains.js';
import { guidanceOf } from '../../graph/means.js';
import { ac, cfr } from '../cite.js';
import { lostThrough } from '../effects.js';
import { joining, noIndicator } from '../no-joint.js';
import { noSubstitute } from '../no-substitute.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'deviation display (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

/** One statement a chain. A source with its own display is its own indicator only where no manual forbids it to stand in. */
export const lateralIndicator = defineRule(
  {
    id: 'lateral-indicator',
    topic: 'indication',
    asks: 'Each source of IFR guidance is joined to an indicator that shows lateral deviation.',
    binds: 'VOR and localizer receivers and GNSS navigators; one statement for each source and indicator.',
    sources: [source, cfr('91.205(d)(2)')],
    messages: {
      joined: '{source} shows lateral deviation on {indicator}.',
      missing: '{source} is joined to no lateral deviation indicator.',
      unclear: 'Whether {source} shows lateral deviation cannot be told.',
    },
    establishes: ['approach-loc', 'approach-ils'],
  },
  (facts) =>
    facts.chains.map((chain) => {
      const clause = judge(facts, chain);
      return {
        subject: chain.id,
        clause,
        messages: { met: 'joined', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'joined' },
        data: { source: chain.source.unit.name, indicator: chain.indicator?.unit.name ?? null },
        effects: lostThrough(chain.id, guidanceOf(chain.source)),
        remedies: joining(facts, clause, chain.source.id),
      };
    }),
);

function judge(facts: Facts, chain: Chain): Clause {
  const elsewhere = noIndicator(facts, chain, 'lateral-deviation', source);
  if (chain.lateral === null) return elsewhere;
  if (chain.indicator !== chain.source)
    return met('lateral-deviation-shown', { source, evidence: chain.lateral.map((link) => link.id) });
  const { type } = chain.source;
  const limit = noSubstitute(chain.source, 'lateral-deviation');
  if (limit !== null)
    return anyOf(
      'lateral-deviation-shown',
      [notMet('own-display-may-stand-in', { source: limit }), elsewhere],
      'cannot-tell',
    );
  // A manual that approves places for the unit's own display approves the display; silence approves nothing.
  return fact(
    type !== null && type.view !== null ? true : null,
    'own-display-may-stand-in',
    `catalogue.${chain.source.id}.view`,
    { source },
  );
}
