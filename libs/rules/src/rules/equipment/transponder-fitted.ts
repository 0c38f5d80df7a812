import { transponderTso } from '../../facts/ads-b.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';
import { tsoNumber } from '../tso.js';
import { builtTo, fittedWith, noUnit, operable, stateOf, waysOut } from '../unit-state.js';

const source = cfr('91.215(a), (b)');
const family = (tso: string) => ['C74', 'C112'].includes(tsoNumber(tso));
/** C112 is named with "the appropriate class", whatever its letter. */
const named = (tso: string) => transponderTso.value.includes(tso) || tsoNumber(tso) === 'C112';

/** Not fitted, inoperative and deactivated have different ways out (91.215(d)), so they have different words. */
export const transponderFitted = defineRule(
  {
    id: 'transponder-fitted',
    topic: 'equipment',
    asks: 'A transponder that meets TSO-C74b, C74c or C112 is fitted and operable.',
    binds:
      'Each fitted transponder, not a portable one; flights in the airspace of 91.215(b) need one that reports altitude.',
    sources: [source, cfr('91.215(d)'), transponderTso.source],
    messages: {
      fitted: '{unit} is fitted and meets a standard that the rule names.',
      'other-standard': '{unit} meets none of the standards that the rule names.',
      inoperative: '{unit} is recorded as inoperative.',
      deactivated: '{unit} is deactivated.',
      unclear: 'To which standard {unit} was built is not recorded.',
      none: 'No transponder is fitted.',
      unrecorded: 'Whether a transponder is fitted is not recorded.',
    },
    establishes: [],
  },
  (facts) => {
    const units = fittedWith(facts, 'transponder');
    return units.length === 0
      ? [noUnit(facts, 'transponder-fitted', 'altitude-reporting', source)]
      : units.map((each) => statement(facts, each));
  },
);

function statement(facts: Facts, unit: UnitFacts): Draft {
  const state = stateOf(facts, unit);
  const clause = allOf(
    'transponder',
    [operable(state, source), builtTo(unit, family, named, transponderTso.source)],
    'cannot-tell',
  );
  return {
    subject: unit.id,
    clause,
    messages: {
      met: 'fitted',
      'not-met': state === 'working' ? 'other-standard' : state,
      'cannot-tell': 'unclear',
      'not-applicable': 'fitted',
    },
    data: { unit: unit.unit.name },
    effects: [{ stops: 'capability', capability: 'altitude-reporting', through: unit.id }],
    remedies: [...waysOut(facts, unit), ...findOut(clause, 'unit.amend', unit.id)],
  };
}
