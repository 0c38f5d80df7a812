import type { FunctionCode, SignalCode } from '../catalogue/type.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { flight, implies, met, notMet } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import type { Airspace } from '../verdict/conditions.js';
import { cfr } from './cite.js';

/** Class A, B and C are controlled airspace by definition. */
const controlled: readonly Airspace[] = ['controlled', 'class-a', 'class-b-c'];

const altitude: readonly (SignalCode | null)[] = ['altitude-gray', 'altitude-serial'];

/** What 91.411 asks: of airplanes and helicopters, under IFR in controlled airspace, whatever the weather. Elsewhere it asks nothing. */
export function underControlledIfr(facts: Facts, body: Clause): Clause {
  return implies(
    airplaneOrHelicopter(facts),
    implies(
      flight('ifr-in-controlled-airspace', { rules: 'ifr', airspace: controlled }, { source: cfr('91.411(a)') }),
      body,
    ),
  );
}

function airplaneOrHelicopter(facts: Facts): Leaf {
  const { kind } = facts.dossier.configuration.aircraft;
  const extra = { source: cfr('91.411(a)') };
  return kind === 'airplane' || kind === 'helicopter'
    ? met('airplane-or-helicopter', extra)
    : notMet('airplane-or-helicopter', extra);
}

/** Deactivated ones too: they come back into use with their own clock. */
export function unitsWith(facts: Facts, ...functions: readonly FunctionCode[]): readonly UnitFacts[] {
  return [...facts.units.values()].filter((each) => functions.some((wanted) => each.functions.has(wanted)));
}

/** Transponders that an altitude reporter serves: itself, or those that its altitude reaches. */
export function transpondersOf(facts: Facts, reporter: UnitFacts): readonly UnitFacts[] {
  if (reporter.functions.has('transponder')) return [reporter];
  const reached = facts.links.filter(
    (link) => link.fromUnit === reporter.id && altitude.includes(facts.signalOf(link)),
  );
  return unitsWith(facts, 'transponder').filter(({ id }) => reached.some(({ toUnit }) => toUnit === id));
}

/** The other way round: reporters that serve a transponder. */
export function reportersOf(facts: Facts, transponder: UnitFacts): readonly UnitFacts[] {
  return unitsWith(facts, 'altitude-reporting').filter((each) =>
    transpondersOf(facts, each).some(({ id }) => id === transponder.id),
  );
}
