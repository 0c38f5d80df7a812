import type { FunctionCode, Limitation } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import { maker, practice } from '../cite.js';
import { advice, lostThrough, planAndRelease } from '../effects.js';
import { defineRule } from '../rule.js';

const general = practice('what an installation manual forbids to join stays apart');

/**
 * One statement a link, over the graph: the units it joins, and what they are joined to besides. Where only the manual of an uncatalogued
 * unit is missing, that is advice; the approval of such a joint is asked elsewhere.
 */
export const linkNotProhibited = defineRule(
  {
    id: 'link-not-prohibited',
    topic: 'interfaces',
    asks: 'No manual forbids a joint: neither the unit at its other end, nor what that unit is joined to besides.',
    binds: 'Every joint between installed units.',
    sources: [general],
    messages: {
      allowed: 'No manual forbids {from} with {to}.',
      forbidden: '{document}, {paragraph} forbids {from} with {to} as they are joined.',
      unclear: 'Whether a manual forbids {from} with {to} cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    facts.links.flatMap((link) => {
      const from = facts.units.get(link.fromUnit);
      const to = facts.units.get(link.toUnit);
      if (!from || !to) return [];
      const bans = bansOn(facts, from, to);
      const strict = bans.some((each) => each.clause.inside !== 'met');
      const unread = [from, to].filter((each) => each.type === null);
      const first = bans.find((each) => each.clause.inside === 'not-met') ?? bans[0];
      return [
        {
          subject: link.id,
          clause: allOf(
            'not-forbidden',
            [
              ...bans.map((each) => each.clause),
              ...unread.map((each) =>
                unknown('manual-of-unit-catalogued', [`configuration.units.${each.id}.typeId`], { source: general }),
              ),
              ...(bans.length + unread.length === 0 ? [met('no-limitation-bears-on-it', { source: general })] : []),
            ],
            'cannot-tell',
          ),
          messages: { met: 'allowed', 'not-met': 'forbidden', 'cannot-tell': 'unclear', 'not-applicable': 'allowed' },
          data: {
            from: from.unit.name,
            to: to.unit.name,
            document: first?.limitation?.document ?? null,
            paragraph: first?.limitation?.paragraph ?? null,
          },
          effects: strict ? [...planAndRelease, ...lostThrough(link.id, facts.capabilitiesThrough(link.id))] : advice,
          remedies: [{ kind: 'do' as const, change: 'link.disconnect', subject: link.id, facts: [] }],
        },
      ];
    }),
);

interface Ban {
  /** Null: nothing is known of a unit one joint further, whose manual may forbid the chain. */
  readonly limitation: Limitation | null;
  readonly clause: Leaf;
}

/** Limitations that could bear on a joint of the two, each judged: of its ends, and of units one joint further that forbid the chain through it. */
function bansOn(facts: Facts, from: UnitFacts, to: UnitFacts): readonly Ban[] {
  const found: Ban[] = [];
  const judge = (limitation: Limitation, path: readonly (readonly [UnitFacts, readonly FunctionCode[]])[]) =>
    found.push({ limitation, clause: banClause(limitation, path) });
  const bothWays = [
    [from, to],
    [to, from],
  ] as const;
  for (const [own, other] of bothWays) {
    for (const limitation of own.type?.limitations ?? []) {
      if (limitation.kind === 'no-link') judge(limitation, [[other, limitation.functions]]);
      if (limitation.kind === 'no-chain') {
        for (const beyond of neighbours(facts, other, own))
          judge(limitation, [
            [other, limitation.functions],
            [beyond, limitation.beyond],
          ]);
      }
    }
    // The link may be the far half of a chain that a neighbour's manual forbids: neighbour to `own`, while `own` is joined to `other`.
    for (const neighbour of neighbours(facts, own, other)) {
      if (neighbour.functions.size === 0) {
        const path = `configuration.units.${neighbour.id}.typeId`;
        found.push({ limitation: null, clause: unknown('unit-beyond-known', [path], { source: general }) });
      }
      for (const limitation of neighbour.type?.limitations ?? []) {
        if (limitation.kind === 'no-chain')
          judge(limitation, [
            [own, limitation.functions],
            [other, limitation.beyond],
          ]);
      }
    }
  }
  return found;
}

function neighbours(facts: Facts, of: UnitFacts, except: UnitFacts): readonly UnitFacts[] {
  const ids = facts.links.flatMap((link) =>
    link.fromUnit === of.id ? [link.toUnit] : link.toUnit === of.id ? [link.fromUnit] : [],
  );
  return [...new Set(ids)].flatMap((id) => (id === except.id ? [] : (facts.units.get(id) ?? [])));
}

/** Forbidden where every step has one of its functions; a unit of which nothing at all is known may have any. */
function banClause(limitation: Limitation, path: readonly (readonly [UnitFacts, readonly FunctionCode[]])[]): Leaf {
  const source = maker(limitation.document, limitation.paragraph);
  const isMeant = path.map(([unit, functions]) =>
    unit.functions.size === 0 ? null : functions.some((each) => unit.functions.has(each)),
  );
  if (isMeant.includes(false)) return met('limitation-kept', { source });
  if (!isMeant.includes(null)) return notMet('limitation-kept', { source });
  const unknownUnits = path.flatMap(([unit]) =>
    unit.functions.size === 0 ? [`configuration.units.${unit.id}.typeId`] : [],
  );
  return unknown('limitation-kept', unknownUnits, { source });
}
