import type { Chain } from '../../graph/chains.js';
import type { Facts } from '../../graph/facts.js';
import { feeding } from '../../graph/feeding.js';
import { guidanceOf } from '../../graph/means.js';
import type { UnitFacts } from '../../graph/units.js';
import { met, notMet } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { ac } from '../cite.js';
import { lostThrough } from '../effects.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'source of the deviation shown (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

/** One statement a chain to a shared indicator: without annunciation the pilot cannot know which source is shown, so each of them is lost there. */
export const sourceAnnunciation = defineRule(
  {
    id: 'source-annunciation',
    topic: 'indication',
    asks: 'Where one indicator shows several sources, the pilot sees which one it shows.',
    binds:
      'Each source on an indicator that it shares with another; an indicator that labels its own source stands in for separate lights.',
    sources: [source],
    messages: {
      shown: '{indicator} shows whether it follows {source}.',
      missing: '{indicator} is shared, and nothing shows whether it follows {source}.',
    },
    establishes: [],
  },
  (facts) =>
    facts.chains.flatMap((chain) => {
      const { indicator } = chain;
      if (indicator === null || !isShared(facts, chain, indicator)) return [];
      return [
        {
          subject: chain.id,
          clause: labelled(facts, chain, indicator),
          messages: { met: 'shown', 'not-met': 'missing', 'cannot-tell': 'missing', 'not-applicable': 'shown' },
          data: { source: chain.source.unit.name, indicator: indicator.unit.name },
          effects: lostThrough(chain.id, guidanceOf(chain.source)),
          remedies: [
            { kind: 'do' as const, change: 'unit.install', subject: indicator.id, facts: [] },
            { kind: 'do' as const, change: 'link.disconnect', subject: chain.id, facts: [] },
          ],
        },
      ];
    }),
);

/** Fed by two units, or by one that is both a satellite and a VHF receiver. */
function isShared(facts: Facts, chain: Chain, indicator: UnitFacts): boolean {
  return feeding(facts, indicator).size > 1 || isTwoSources(chain.source);
}

function isTwoSources({ functions }: UnitFacts): boolean {
  return functions.has('gnss') && (functions.has('vor-receiver') || functions.has('loc-receiver'));
}

function labelled(facts: Facts, chain: Chain, indicator: UnitFacts): Clause {
  const onPath = [...(chain.lateral ?? []), ...(chain.vertical ?? [])].map((link) => link.toUnit);
  const joined = facts.links
    .filter((link) => facts.signalOf(link) === 'source-status' && [...onPath, chain.source.id].includes(link.fromUnit))
    .map((link) => link.toUnit);
  // A source that is two in one may say itself which of them it sends, as long as it has the indicator to itself.
  const alone = feeding(facts, indicator).size <= 1 ? [chain.source.id] : [];
  const label = [indicator.id, ...onPath, ...joined, ...alone].find((id) => {
    const unit = facts.units.get(id);
    return (
      unit?.active === true && unit.functions.has('source-annunciation') && !unit.functions.has('portable-display')
    );
  });
  return label === undefined
    ? notMet('source-annunciated', { source })
    : met('source-annunciated', { source, evidence: [label] });
}
