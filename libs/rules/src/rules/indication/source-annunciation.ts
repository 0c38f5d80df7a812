import type { Annunciator } from '../../graph/annunciation.js';
import { annunciationId, inUse, passedBy, sourceLabelsOf } from '../../graph/annunciation.js';
import type { Chain } from '../../graph/chains.js';
import type { Facts } from '../../graph/facts.js';
import { guidanceOf } from '../../graph/means.js';
import type { UnitFacts } from '../../graph/units.js';
import { anyOf, met } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { annunciatedInView, reactivations, whyNot } from '../annunciated.js';
import { ac } from '../cite.js';
import { lostThrough } from '../effects.js';
import { joining, noJoint, unclearJoints } from '../no-joint.js';
import { noSubstitute } from '../no-substitute.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'source of the deviation shown (from memory)', 'change 2, 7 Apr 2016', 'from-memory');
const code = 'source-annunciation';

/**
 * One statement a chain to a shared indicator and a unit that shows its source, or one on the chain where none does: without
 * annunciation the pilot cannot know which source is shown, so each of them is lost there.
 */
export const sourceAnnunciation = defineRule(
  {
    id: 'source-annunciation',
    topic: 'indication',
    asks: 'Where one indicator shows several sources, the pilot sees which one it shows.',
    binds:
      'Each source on an indicator that it shares with another; an indicator that labels its own source stands in for separate lights.',
    sources: [source],
    messages: {
      shown: '{by} shows in view whether {indicator} follows {source}.',
      hidden: '{by} shows whether {indicator} follows {source}, out of view.',
      'no-substitute': 'By its manual {by} stands in for no annunciator of the source.',
      missing: '{indicator} is shared, and nothing shows whether it follows {source}.',
      unclear: 'Whether the pilot sees that {indicator} follows {source} cannot be told.',
    },
    establishes: [],
  },
  (facts) => facts.chains.flatMap((chain) => ofChain(facts, chain)),
);

function ofChain(facts: Facts, chain: Chain): readonly Draft[] {
  const { source: own } = chain;
  const found = sourceLabelsOf(facts, chain);
  if (found === null) return [];
  const { indicator, labels } = found;
  const other = noJoint(
    facts,
    'another-annunciator-joined',
    source,
    unclearJoints(facts, [...passedBy(chain), own.id], ['source-status'], [code]),
  );
  const statement = (by: Annunciator | null): Draft => {
    const subject = by === null ? chain.id : annunciationId(chain, by, code);
    const clause = anyOf(
      'source-shown',
      [...(by === null ? [] : [labelled(facts, indicator, by)]), other],
      'cannot-tell',
    );
    return {
      subject,
      clause,
      messages: {
        met: 'shown',
        'not-met': whyNot(by, code),
        'cannot-tell': 'unclear',
        'not-applicable': 'shown',
      },
      data: { source: own.unit.name, indicator: indicator.unit.name, by: by?.unit.unit.name ?? null },
      effects: lostThrough(subject, guidanceOf(own)),
      remedies: [
        { kind: 'do', change: 'unit.install', subject: indicator.id, facts: [] },
        { kind: 'do', change: 'link.disconnect', subject: chain.id, facts: [] },
        ...joining(facts, clause, own.id),
        ...reactivations(labels),
      ],
    };
  };
  const ways = inUse(labels);
  return ways.length === 0 ? [statement(null)] : ways.map(statement);
}

/** Who sees the deviation sees the indicator's own label; where that sits is asked of the indicator. */
function labelled(facts: Facts, indicator: UnitFacts, by: Annunciator): Clause {
  return by.unit === indicator && noSubstitute(indicator, code) === null
    ? met('indicator-labels-source', { source, evidence: [indicator.id] })
    : annunciatedInView(facts, by, code, 'maximum', source);
}
