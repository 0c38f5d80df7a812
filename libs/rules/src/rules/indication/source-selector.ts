import type { Facts } from '../../graph/facts.js';
import { sendersTo } from '../../graph/feeding.js';
import type { UnitFacts } from '../../graph/units.js';
import { met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { ac } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { listed } from '../gaps.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'selection of the source shown (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

/** One statement an indicator that several units send deviation to. Whether the pilot sees which one is shown is asked apart. */
export const sourceSelector = defineRule(
  {
    id: 'source-selector',
    topic: 'indication',
    asks: 'Where an indicator takes deviation from several units, a selector or relay, or the indicator itself, lets one through at a time.',
    binds: 'Indicators that more than one unit sends deviation to.',
    sources: [source],
    messages: {
      selected: 'One source at a time reaches {indicator}.',
      together: '{sources} send deviation to {indicator} with nothing that selects between them.',
      unclear: 'Whether {indicator} selects between {sources} itself cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((indicator) => {
      const senders = [...new Set(sendersTo(facts, indicator.id))];
      if (!isIndicator(indicator) || !isShared(senders)) return [];
      return [
        {
          subject: indicator.id,
          clause: selects(facts, indicator, senders),
          messages: {
            met: 'selected',
            'not-met': 'together',
            'cannot-tell': 'unclear',
            'not-applicable': 'selected',
          },
          data: { indicator: indicator.unit.name, sources: listed(senders.map(({ unit }) => unit.name)) },
          effects: planAndRelease,
          remedies: [{ kind: 'do' as const, change: 'unit.install', subject: indicator.id, facts: [] }],
        },
      ];
    }),
);

function isIndicator({ functions }: UnitFacts): boolean {
  return functions.has('lateral-deviation') || functions.has('vertical-deviation');
}

function isShared(senders: readonly UnitFacts[]): boolean {
  return senders.length > 1 || senders.some(({ functions }) => functions.has('source-selector'));
}

function selects(facts: Facts, indicator: UnitFacts, senders: readonly UnitFacts[]): Clause {
  const [only, ...others] = senders;
  if (only && others.length === 0) return met('joined-through-selector', { source, evidence: [only.id] });
  if (indicator.functions.has('source-selector')) return met('indicator-selects', { source, evidence: [indicator.id] });
  return indicator.type === null
    ? unknown('indicator-selects', [`configuration.units.${indicator.id}.typeId`], { source })
    : notMet('source-selected', { source, evidence: senders.map(({ id }) => id) });
}
