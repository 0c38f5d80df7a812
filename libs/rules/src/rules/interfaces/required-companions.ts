import type { Limitation } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { maker, practice } from '../cite.js';
import { capabilitiesOf, lostThrough, planAndRelease } from '../effects.js';
import { timelessOutcome } from '../entry-outcome.js';
import { joined } from '../gaps.js';
import { noJoint } from '../no-joint.js';
import { defineRule } from '../rule.js';

const general = practice('a manual that gives a function only together with another unit is kept to');

/** One statement a unit and function whose manual asks for a unit beside it: what that unit must do, joined to it, and where it sits. */
export const requiredCompanions = defineRule(
  {
    id: 'required-companions',
    topic: 'interfaces',
    asks: 'A function that the manual gives only together with another unit has that unit joined to it, at the place that the manual names.',
    binds: 'Units whose manual states such a limitation for a function that they have.',
    sources: [general],
    messages: {
      beside: '{unit} has beside it what {document} requires for {function}: {wanted}.',
      missing: '{document} requires {wanted} joined to {unit} for {function}, and there is none.',
      unclear: 'Whether {unit} has beside it what {document} requires for {function} ({wanted}) cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((each) => {
      if (!each.active) return [];
      const limits = each.type?.limitations.filter(({ kind }) => kind === 'requires') ?? [];
      const bound = new Set(limits.flatMap(({ functions }) => functions.filter((code) => each.functions.has(code))));
      return [...bound].map((code) => {
        const asking = limits
          .filter(({ functions }) => functions.includes(code))
          .map((limit) => ({ limit, clause: companion(facts, each, limit) }));
        const lacking = asking.filter(({ clause }) => timelessOutcome(clause) !== 'met');
        const named = (lacking.length > 0 ? lacking : asking).map(({ limit }) => limit);
        return {
          subject: `${each.id}:${code}`,
          clause: allOf(
            'companions',
            asking.map(({ clause }) => clause),
            'cannot-tell',
          ),
          messages: { met: 'beside', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'beside' },
          data: {
            unit: each.unit.name,
            function: code,
            wanted: joined(named.flatMap(({ beyond }) => beyond)),
            document: named[0]?.document ?? null,
          },
          effects: [...planAndRelease, ...lostThrough(each.id, capabilitiesOf(code))],
          remedies: [{ kind: 'do' as const, change: 'link.connect', subject: each.id, facts: [] }],
        };
      });
    }),
);

/** A portable device stands in for nothing, so it is no companion either. */
function companion(facts: Facts, own: UnitFacts, limit: Limitation): Clause {
  const source = maker(limit.document, limit.paragraph);
  const neighbours = neighboursOf(facts, own).filter((each) => each.active && !each.functions.has('portable-display'));
  const found = neighbours.filter(({ functions }) => limit.beyond.some((code) => functions.has(code)));
  const vague = neighbours.filter(({ functions }) => functions.size === 0);
  const parts = [
    ...found.map((each) => atPlace(each, limit)),
    ...vague.map(({ id }) => unknown('function-of-neighbour', [`configuration.units.${id}.typeId`], { source })),
  ];
  return anyOf('companion', [...parts, noJoint(facts, 'companion-joined', source)], 'cannot-tell');
}

function atPlace({ id, unit }: UnitFacts, { places, document, paragraph }: Limitation): Clause {
  const extra = { source: maker(document, paragraph), evidence: [id] };
  if (places.length === 0) return met('companion-joined', extra);
  const there = unit.place === null ? null : places.includes(unit.place);
  return fact(there, 'companion-at-place', `configuration.units.${id}.place`, extra);
}

function neighboursOf(facts: Facts, { id }: UnitFacts): readonly UnitFacts[] {
  const ids = facts.links.flatMap((link) =>
    link.fromUnit === id ? [link.toUnit] : link.toUnit === id ? [link.fromUnit] : [],
  );
  return [...new Set(ids)].flatMap((each) => facts.units.get(each) ?? []);
}
