import type { Annunciator } from '../../graph/annunciation.js';
import { annunciationId, annunciatorsOf, inUse } from '../../graph/annunciation.js';
import type { Chain } from '../../graph/chains.js';
import type { Facts } from '../../graph/facts.js';
import { anyOf, notMet } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { annunciatedInView, reactivations, whyNot } from '../annunciated.js';
import { ac } from '../cite.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { joining, noJoint, unclearJoints } from '../no-joint.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'loss of integrity in view (from memory)', 'change 2, 7 Apr 2016', 'from-memory');
const code = 'integrity-annunciation';

/**
 * One statement a chain of a satellite navigator and a unit that annunciates: each is a means of its own, so that what bears on the
 * annunciator bears on what leans on it. One on the chain itself where nothing does.
 */
export const integrityAnnunciation = defineRule(
  {
    id: 'integrity-annunciation',
    topic: 'indication',
    asks: 'The pilot sees loss of integrity: on the navigator itself where it is in view, or on an indicator or annunciator joined to it that is in view.',
    binds:
      'Satellite navigators; one statement for each indicator that they are joined to and each unit that annunciates. Another navigator speaks of itself, unless a line of its own tells it or it shows the deviation.',
    sources: [source],
    messages: {
      shown: 'Loss of integrity of {unit} is annunciated in view by {by}.',
      hidden: '{by} annunciates loss of integrity of {unit} out of view.',
      'no-substitute': 'By its manual {by} stands in for no annunciator of integrity.',
      missing: 'Nothing in view annunciates loss of integrity of {unit}.',
      unclear: 'Whether loss of integrity of {unit} is in view cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    facts.chains.filter((chain) => chain.source.functions.has('gnss')).flatMap((chain) => ofChain(facts, chain)),
);

function ofChain(facts: Facts, chain: Chain): readonly Draft[] {
  const { source: own } = chain;
  const found = annunciatorsOf(facts, own, code);
  const other = noJoint(
    facts,
    'another-annunciator-joined',
    source,
    unclearJoints(facts, [own.id], ['integrity-flag', 'data'], [code]),
  );
  const statement = (by: Annunciator | null): Draft => {
    const subject = by === null ? chain.id : annunciationId(chain, by, code);
    const shown =
      by === null ? notMet('annunciates-itself', { source }) : annunciatedInView(facts, by, code, 'optimum', source);
    const clause = anyOf('integrity-shown', [shown, other], 'cannot-tell');
    return {
      subject,
      clause,
      messages: {
        met: 'shown',
        'not-met': whyNot(by, code),
        'cannot-tell': 'unclear',
        'not-applicable': 'shown',
      },
      data: { unit: own.unit.name, by: by?.unit.unit.name ?? null },
      effects: lostThrough(subject, gnssCapabilities),
      remedies: [...joining(facts, clause, own.id), ...reactivations(found)],
    };
  };
  const ways = inUse(found);
  return ways.length === 0 ? [statement(null)] : ways.map(statement);
}
