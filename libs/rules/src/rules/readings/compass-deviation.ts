import { judgeCompass } from '../../calculations/compass.js';
import { compassDeviationDeg, compassStepDeg, compassStepRotorcraftDeg } from '../../facts/compass.js';
import { rewrittenByAmendment } from '../../facts/old-part-23.js';
import type { Facts } from '../../graph/facts.js';
import { implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { readingMessages, recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

/** Figures of a certification basis, not of an operation: they advise and ground nothing. */
export const compassDeviation = defineRule(
  {
    id: 'compass-deviation',
    topic: 'readings',
    asks: 'The newest compass swing shows at most 10 degrees of deviation, in steps of at most 30 degrees (rotorcraft 45), with engines running and radios stated.',
    binds: 'Aircraft certificated under CAR 3, part 23 before 2017 or part 27; advice only.',
    sources: [compassDeviationDeg.source, compassStepDeg.source, compassStepRotorcraftDeg.source],
    messages: {
      within: 'The compass swing of {done} is within its limits.',
      outside: 'Compass, {what} at {at}: {value} {unit}, the limit is {limit}.',
      incomplete: 'The compass swing of {done} cannot be judged in full.',
      none: 'No compass swing with readings that this basis judges.',
    },
    establishes: [],
  },
  (facts) => {
    const { kind } = facts.dossier.configuration.aircraft;
    const found = recordedReadings(facts, ['compass-swing'], ['aircraft'], ({ compass }) =>
      compass === null ? null : judgeCompass(compass, kind === 'helicopter' ? 'rotorcraft' : 'airplane'),
    );
    const draft: Draft = {
      subject: 'aircraft',
      clause: found.data.done === null ? found.clause : implies(bound(facts), found.clause),
      messages: readingMessages,
      data: found.data,
      effects: [{ stops: 'nothing', kind: 'advice' }],
      remedies: [recordIt('compass-swing')],
    };
    return [draft];
  },
);

function bound(facts: Facts): Leaf {
  const { basis } = facts.dossier.configuration.aircraft;
  const extra = { source: compassDeviationDeg.source };
  if (basis === null) return unknown('basis-with-compass-figures', ['configuration.aircraft.basis'], extra);
  // Amendment 23-64 of 2017 replaced the figures by performance rules.
  if (basis.code === 'part-23' && basis.amendment === null)
    return unknown('basis-with-compass-figures', ['configuration.aircraft.basis.amendment'], extra);
  const has =
    basis.code === 'car-3' ||
    basis.code === 'part-27' ||
    (basis.code === 'part-23' && (basis.amendment ?? 0) < rewrittenByAmendment.value);
  return has ? met('basis-with-compass-figures', extra) : notMet('basis-with-compass-figures', extra);
}
