import { compassStepDeg, compassStepRotorcraftDeg } from '../../facts/compass.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, implies, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { compassFiguresBind } from '../compass-basis.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';

/** What the card must say is judged where it was made, by `compass-deviation`. */
export const compassCard = defineRule(
  {
    id: 'compass-card',
    topic: 'readings',
    asks: 'A card with the deviation of the compass is fitted on or near it, in view.',
    binds: 'Aircraft certificated under CAR 3, part 23 before 2017 or part 27; advice only.',
    sources: [compassStepDeg.source, compassStepRotorcraftDeg.source],
    messages: {
      fitted: 'The compass has its card in view.',
      missing: 'The compass has no card in view.',
      unclear: 'Whether the compass has its card in view is not recorded.',
      none: 'The basis of certification asks for no compass card.',
    },
    establishes: [],
  },
  (facts) => {
    const body = card(facts);
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(compassFiguresBind(facts), body),
      messages: { met: 'fitted', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'none' },
      data: {},
      effects: [{ stops: 'nothing', kind: 'advice' }],
      remedies: [
        { kind: 'do', change: 'placard.fit', subject: 'compass', facts: [] },
        ...findOut(body, 'completeness.state', 'placards'),
      ],
    };
    return [draft];
  },
);

/** No card among placards that somebody stated to be all is certain; else one may hang there that nobody recorded. */
function card(facts: Facts): Clause {
  const { source } =
    facts.dossier.configuration.aircraft.kind === 'helicopter' ? compassStepRotorcraftDeg : compassStepDeg;
  const cards = facts.dossier.configuration.placards.filter((each) => each.kind === 'compass');
  const first = cards.find((each) => each.inView !== false) ?? cards[0];
  if (first)
    return allOf(
      'compass-card',
      [fact(first.inView, 'card-in-view', `configuration.placards.${first.id}.inView`, { source })],
      'cannot-tell',
    );
  return facts.complete('placards') === null
    ? unknown('card-recorded', ['status.completeness.placards'], { source })
    : notMet('card-fitted', { source });
}
