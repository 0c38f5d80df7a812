import type { EquipmentItem } from '../../dossier/aircraft.js';
import { annunciatorsOf } from '../../graph/annunciation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, met, notMet } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { aim, practice } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { joined } from '../gaps.js';
import { defineRule } from '../rule.js';

const source = practice('a portable device stands in for no required display');
const handHeld = aim('1-1-17 b.2(a)(1)');

/**
 * One statement a portable device that is joined to the aircraft or named as an item of it. Whatever it shows counts for nothing where a
 * display is required: the chains know no portable indicator. Here stands the reason, for the plan and for the release.
 */
export const portableLinkNotPrimary = defineRule(
  {
    id: 'portable-link-not-primary',
    topic: 'interfaces',
    asks: 'A portable device that is joined to the aircraft repeats what a fitted display shows, and stands in for none that is required.',
    binds: 'Portable devices with a joint, or named as an item of required equipment.',
    sources: [source, handHeld],
    messages: {
      repeats: '{unit} stands in for no required display.',
      primary: '{unit} is portable and the only one to give: {shown}.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter(
        (each) => each.functions.has('portable-display') && (isJoined(facts, each) || itemsOf(facts, each).length > 0),
      )
      .map((each) => {
        const alone = aloneFor(facts, each);
        return {
          subject: each.id,
          clause: clauseOf(facts, each),
          messages: { met: 'repeats', 'not-met': 'primary', 'cannot-tell': 'primary', 'not-applicable': 'repeats' },
          data: { unit: each.unit.name, shown: joined(alone) ?? 'none' },
          effects: planAndRelease,
          remedies: [{ kind: 'do' as const, change: 'link.connect', subject: each.id, facts: [] }],
        };
      }),
);

function clauseOf(facts: Facts, each: UnitFacts): Clause {
  const leaves = aloneFor(facts, each).map((what): Leaf =>
    notMet(`fitted-display-for-${what}`, { source, evidence: [each.id] }),
  );
  return allOf(
    'stands-in-for-nothing',
    leaves.length > 0 ? leaves : [met('repeats-only', { source: handHeld })],
    'cannot-tell',
  );
}

/** What the device alone shows of a source of guidance, and the items of 91.205 that it is said to make up. */
function aloneFor(facts: Facts, portable: UnitFacts): readonly string[] {
  const shown = (['lateral-deviation', 'vertical-deviation', 'integrity-annunciation'] as const).filter((code) =>
    sourcesOf(facts, portable).some(
      (source) =>
        portable.functions.has(code) &&
        facts.chains.every((chain) => chain.source !== source || !showsOnChain(facts, chain, code)),
    ),
  );
  return [...shown, ...itemsOf(facts, portable)];
}

function showsOnChain(
  facts: Facts,
  chain: Facts['chains'][number],
  code: 'lateral-deviation' | 'vertical-deviation' | 'integrity-annunciation',
): boolean {
  if (code === 'lateral-deviation') return chain.lateral !== null;
  if (code === 'vertical-deviation') return chain.vertical !== null;
  return annunciatorsOf(facts, chain.source, code).length > 0;
}

/** Fitted sources of guidance that the device is joined to. */
function sourcesOf(facts: Facts, portable: UnitFacts): readonly UnitFacts[] {
  return [...new Set(facts.chains.map((chain) => chain.source))].filter((source) =>
    facts.links.some((link) => link.fromUnit === source.id && link.toUnit === portable.id),
  );
}

function isJoined(facts: Facts, { id }: UnitFacts): boolean {
  return facts.links.some((link) => link.fromUnit === id || link.toUnit === id);
}

function itemsOf(facts: Facts, { id }: UnitFacts): readonly EquipmentItem[] {
  return facts.dossier.configuration.equipment.flatMap((each) =>
    each.unitId === id && each.state === 'fitted' ? [each.item] : [],
  );
}
