import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { anyOf, fact, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { maker, practice } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { defineRule } from '../rule.js';

const source = practice('a unit with its connectors stays clear of what lies behind the panel');

/** One statement a unit of the panel. What lies behind is the first thing that stops a plan, and it may foul the controls. */
export const depthBehindPanel = defineRule(
  {
    id: 'depth-behind-panel',
    topic: 'installation',
    asks: 'The unit with its connectors is no deeper than the free space behind its opening.',
    binds: 'Each unit in an opening of the panel, and each catalogued panel unit whose opening is not recorded.',
    sources: [source],
    messages: {
      clear: '{unit} needs {depthIn} in behind the panel; {freeIn} in are free.',
      'too-deep': '{unit} needs {depthIn} in behind the panel, but only {freeIn} in are free.',
      unclear: 'Whether there is room behind the panel for {unit} cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].filter(sitsInPanel).map((each) => {
      const opening = openingOf(facts, each);
      return {
        subject: each.id,
        clause: anyOf('room-behind', [unitAcceptedAsFound(each), measured(facts, each)], 'cannot-tell'),
        messages: { met: 'clear', 'not-met': 'too-deep', 'cannot-tell': 'unclear', 'not-applicable': 'clear' },
        data: { unit: each.unit.name, depthIn: each.type?.bezel?.depthIn ?? null, freeIn: opening?.depthIn ?? null },
        effects: planAndRelease,
        remedies: [
          {
            kind: 'find-out' as const,
            change: 'opening.set',
            subject: opening?.id ?? each.id,
            facts: missing(facts, each),
          },
        ],
      };
    }),
);

function sitsInPanel({ unit, type }: UnitFacts): boolean {
  return unit.openingId !== null || (unit.place !== 'remote' && type !== null && type.bezel !== null);
}

function openingOf(facts: Facts, { unit }: UnitFacts) {
  return facts.dossier.configuration.openings.find((each) => each.id === unit.openingId) ?? null;
}

function measured(facts: Facts, each: UnitFacts): Clause {
  const needs = each.type?.bezel?.depthIn ?? null;
  const free = openingOf(facts, each)?.depthIn ?? null;
  if (needs === null || free === null) return unknown('depth', missing(facts, each), { source });
  return fact(needs <= free, 'depth', '', {
    source: each.type ? maker(each.type.document, 'outline with connectors') : source,
    value: { amount: needs, unit: 'in' },
    limit: { amount: free, unit: 'in' },
  });
}

function missing(facts: Facts, each: UnitFacts): readonly string[] {
  const opening = openingOf(facts, each);
  return [
    ...(each.type?.bezel?.depthIn == null ? [`catalogue.${each.id}.bezel.depthIn`] : []),
    ...(opening === null
      ? [`configuration.units.${each.id}.openingId`]
      : opening.depthIn === null
        ? [`configuration.openings.${opening.id}.depthIn`]
        : []),
  ];
}
