import type { FunctionCode, Limitation } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, not, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { maker, practice } from '../cite.js';
import { lostThrough, planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const general = practice('options that a manual excludes from each other are not switched on together');
const off = new Set(['off', 'no', 'none', 'disabled', 'not fitted']);

/** One statement a unit whose manual excludes options from each other. An option carries the name of the function it switches. */
export const optionsNotExclusive = defineRule(
  {
    id: 'options-not-exclusive',
    topic: 'interfaces',
    asks: 'Options that the manual excludes from each other are not both switched on, in the unit or, where the manual says so, in two units.',
    binds: 'Units whose manual states such a limitation.',
    sources: [general],
    messages: {
      kept: 'The options of {unit} exclude nothing that is switched on.',
      both: '{unit} has options switched on together that {document} excludes from each other.',
      unclear: 'Which options of {unit} are switched on is not recorded.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((each) => {
      const limits = each.type?.limitations.filter(({ kind }) => kind === 'not-both') ?? [];
      return limits.length === 0 ? [] : [draft(facts, each, limits)];
    }),
);

function draft(facts: Facts, each: UnitFacts, limits: readonly Limitation[]) {
  return {
    subject: each.id,
    clause: allOf(
      'options-apart',
      limits.flatMap((limit) => pairsApart(facts, each, limit)),
      // No other unit has what must be off.
      limits.every(({ elsewhere }) => elsewhere) ? 'met' : 'cannot-tell',
    ),
    messages: { met: 'kept', 'not-met': 'both', 'cannot-tell': 'unclear', 'not-applicable': 'kept' },
    data: { unit: each.unit.name, document: limits[0]?.document ?? null },
    effects: [...planAndRelease, ...lostThrough(each.id, facts.capabilitiesThrough(each.id))],
    remedies: [findOut('unit.amend', each.id, `configuration.units.${each.id}.options`)],
  };
}

/** Of each forbidden pair one is off; where the manual means other units, on each of those that have the function. */
function pairsApart(facts: Facts, each: UnitFacts, limit: Limitation): readonly Clause[] {
  return limit.functions.flatMap((one) =>
    limit.beyond.flatMap((other) =>
      holders(facts, each, limit, other).map((holder) =>
        anyOf('one-is-off', [not(switchedOn(each, one, limit)), not(switchedOn(holder, other, limit))], 'cannot-tell'),
      ),
    ),
  );
}

function holders(facts: Facts, each: UnitFacts, limit: Limitation, code: FunctionCode): readonly UnitFacts[] {
  if (!limit.elsewhere) return [each];
  const others = [...facts.units.values()].filter((other) => other !== each && other.active);
  return others.filter(({ functions }) => functions.has(code) || functions.size === 0);
}

function switchedOn(each: UnitFacts, name: FunctionCode, limit: Limitation): Leaf {
  const source = maker(limit.document, limit.paragraph);
  const path = `configuration.units.${each.id}`;
  if (each.functions.size === 0) return unknown(`option-${name}`, [`${path}.typeId`], { source });
  // A function that the unit does not have cannot be on.
  if (!each.functions.has(name)) return notMet(`option-${name}`, { source });
  const option = each.unit.options.find((candidate) => candidate.name === name);
  const on = option ? !off.has(option.value.trim().toLowerCase()) : null;
  return fact(on, `option-${name}`, `${path}.options.${name}`, { source });
}
