import { smallUpToLb } from '../facts/small-aircraft.js';
import type { Facts } from '../graph/facts.js';
import { met, not, notMet, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';
import { cfr } from './cite.js';

const source = cfr('91.409(c), (d), (e)');
const selects = cfr('91.409(e)');
const label = 'needs-a-program';

/** Whether annual and 100-hour inspections bind: not where a program of 91.409(d) or (e), or of part 125 or 135, takes their place. */
export function boundWithoutProgram(facts: Facts, asLabel: string): Leaf {
  return { ...not(programInPlace(facts)), label: asLabel, source };
}

/** The program that an aircraft is said to follow takes the place of the other inspections only where the text lets it. */
function programInPlace(facts: Facts): Leaf {
  const { program } = facts.dossier.configuration.aircraft;
  if (program === null || program.kind === 'annual') return notMet(label);
  return program.kind === 'selected-program' ? maySelect(facts) : met(label);
}

/** Named by 91.409(e): what must select a program, and turbine rotorcraft, whose owner may choose one. */
export function maySelect(facts: Facts): Leaf {
  const { kind, engine } = facts.dossier.configuration.aircraft;
  if (kind !== 'helicopter') return mustSelect(facts);
  if (engine === null) return missing('engine');
  return engine === 'turboshaft' ? met(label, { source: selects }) : notMet(label, { source: selects });
}

/** Single reciprocating engines are small unless a weight says otherwise; single-engine turboprops are not named. */
export function mustSelect(facts: Facts): Leaf {
  const { kind, engine, engineCount, maxWeightLb, certificate } = facts.dossier.configuration.aircraft;
  const no = notMet(label, { source: selects });
  if (kind !== 'airplane' || certificate === 'experimental' || certificate === 'light-sport') return no;
  if (maxWeightLb !== null && maxWeightLb > smallUpToLb.value) return met(label, { source: selects });
  if (engine === null) return missing('engine');
  if (engine === 'turbojet' || engine === 'turboprop') {
    if (engineCount === null) return missing('engineCount');
    return engineCount > 1 ? met(label, { source: selects }) : no;
  }
  return maxWeightLb === null && engineCount !== null && engineCount > 1 ? missing('maxWeightLb') : no;
}

function missing(fact: 'engine' | 'engineCount' | 'maxWeightLb'): Leaf {
  return unknown(label, [`configuration.aircraft.${fact}`], { source: selects });
}
