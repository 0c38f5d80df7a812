import type { FunctionCode, Limitation, SignalCode } from '../../catalogue/type.js';
import type { Link } from '../../dossier/installation.js';
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
    asks: 'No manual forbids a joint: neither the unit at its other end, nor what that unit is joined to besides. A wire for audio or power joins no function of which nothing passes over it.',
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
      const bans = bansOn(facts, link, from, to);
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
function bansOn(facts: Facts, link: Link, from: UnitFacts, to: UnitFacts): readonly Ban[] {
  const found: Ban[] = [];
  const judge = (limitation: Limitation, path: readonly Step[]) =>
    found.push({ limitation, clause: banClause(limitation, path) });
  const here = [facts.signalOf(link)];
  const bothWays = [
    [from, to],
    [to, from],
  ] as const;
  for (const [own, other] of bothWays) {
    for (const limitation of own.type?.limitations ?? []) {
      if (limitation.kind === 'no-link')
        judge(limitation, [{ unit: other, functions: limitation.functions, over: here }]);
      if (limitation.kind === 'no-chain') {
        for (const beyond of neighbours(facts, other, own))
          judge(limitation, [
            { unit: other, functions: limitation.functions, over: here },
            { unit: beyond, functions: limitation.beyond, over: signalsBetween(facts, other, beyond) },
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
            { unit: own, functions: limitation.functions, over: signalsBetween(facts, neighbour, own) },
            { unit: other, functions: limitation.beyond, over: here },
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

function signalsBetween(facts: Facts, one: UnitFacts, other: UnitFacts): readonly (SignalCode | null)[] {
  const ends = [one.id, other.id];
  return facts.links
    .filter(({ fromUnit, toUnit }) => ends.includes(fromUnit) && ends.includes(toUnit))
    .map((link) => facts.signalOf(link));
}

/** A unit on the way, the functions that are meant of it, and the signals over which it is reached; null: not known which. */
interface Step {
  readonly unit: UnitFacts;
  readonly functions: readonly FunctionCode[];
  readonly over: readonly (SignalCode | null)[];
}

/** Forbidden where every step has one of its functions; a unit of which nothing at all is known may have any. */
function banClause(limitation: Limitation, path: readonly Step[]): Leaf {
  const source = maker(limitation.document, limitation.paragraph);
  const isMeant = path.map(({ unit, functions, over }) => {
    const joined = functions.filter((each) => over.some((signal) => mayCarry(signal, each)));
    if (joined.length === 0) return false;
    return unit.functions.size === 0 ? null : joined.some((each) => unit.functions.has(each));
  });
  if (isMeant.includes(false)) return met('limitation-kept', { source });
  if (!isMeant.includes(null)) return notMet('limitation-kept', { source });
  const unknownUnits = path.flatMap(({ unit }) =>
    unit.functions.size === 0 ? [`configuration.units.${unit.id}.typeId`] : [],
  );
  return unknown('limitation-kept', unknownUnits, { source });
}

/** Of a portable device, and of what has no name of its own, anything is meant. */
const whole: readonly FunctionCode[] = ['portable-display', 'other'];
/** What is heard. */
const heard: readonly FunctionCode[] = [...whole, 'audio', 'com', 'vor-receiver', 'loc-receiver', 'dme', 'elt'];

/** Whether anything of a function can pass over a wire; only one that is known to be for audio or power takes a function out. */
function mayCarry(signal: SignalCode | null, each: FunctionCode): boolean {
  if (signal === 'audio') return heard.includes(each);
  return signal !== 'power' || whole.includes(each);
}
