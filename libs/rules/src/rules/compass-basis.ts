import { compassDeviationDeg } from '../facts/compass.js';
import { rewrittenByAmendment } from '../facts/old-part-23.js';
import type { Facts } from '../graph/facts.js';
import { met, notMet, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';

/** The aircraft was certificated to a text with figures for the compass and its card. */
export function compassFiguresBind(facts: Facts): Leaf {
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
