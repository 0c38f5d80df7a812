import type { Mass } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { practice } from '../cite.js';
import { countRemedies, mayLackRemoval, unitsNoted } from '../mass-notes.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const source = practice('a change always revises the equipment list, also where weight and balance stay as they are');

/** The list of equipment is not the weight record: a swap at equal weight changes it all the same. */
export const equipmentListCurrent = defineRule(
  {
    id: 'equipment-list-current',
    topic: 'mass',
    asks: 'Every change since the equipment list was revised stands on it, whatever it weighs.',
    binds: 'Every aircraft.',
    sources: [source],
    messages: {
      current: 'The equipment list, revised {revisedOn}, holds every change.',
      revise: 'The equipment list, revised {revisedOn}, does not hold every change: {change}.',
      older: 'The equipment list, revised {revisedOn}, is older than the weight record.',
      unclear: 'Whether the equipment list holds every change cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const { mass } = facts.dossier.configuration;
    const change = mass && unlisted(facts, mass);
    return [
      {
        subject: 'aircraft',
        clause:
          mass === null ? unknown('equipment-list-known', ['configuration.mass'], { source }) : judge(facts, mass),
        messages: {
          met: 'current',
          'not-met': change === null ? 'older' : 'revise',
          'cannot-tell': 'unclear',
          'not-applicable': 'current',
        },
        data: { revisedOn: mass?.equipmentListRevisedOn ?? null, change },
        effects: [{ stops: 'release' }],
        remedies: [
          { kind: 'do', change: 'mass.revise', subject: 'aircraft', facts: [] },
          findOut('mass.revise', 'aircraft', 'configuration.mass.equipmentListRevisedOn'),
          ...countRemedies(mass && lacksRemoval(facts, mass) ? ['configuration.mass.changesSince'] : []),
        ],
      },
    ];
  },
);

/** The first change that is not on the list, or a unit that went in with none; null: there is neither. */
function unlisted(facts: Facts, mass: Mass): string | null {
  const isLater = (on: string) => revised(mass, on).inside === 'not-met';
  const change = mass.changesSince.find(({ listed, on }) => listed === false && isLater(on));
  const unit = unitsNoted(facts, mass).find(({ on, noted }) => !noted && on !== null && isLater(on));
  return change?.what ?? (unit && facts.units.get(unit.id)?.unit.name) ?? null;
}

function lacksRemoval(facts: Facts, mass: Mass): boolean {
  return mayLackRemoval(facts, mass, mass.equipmentListRevisedOn);
}

function judge(facts: Facts, mass: Mass): Clause {
  const clauses = [...changesListed(mass), ...unitsListed(facts, mass), ...removalsListed(facts, mass)];
  return allOf('every-change-listed', clauses.length > 0 ? clauses : [revised(mass, mass.revisedOn)], 'cannot-tell');
}

function changesListed(mass: Mass): readonly Clause[] {
  return mass.changesSince.map((each, index) =>
    anyOf(
      'change-listed',
      [
        fact(each.listed, 'ticked-as-listed', `configuration.mass.changesSince.${index}.listed`, { source }),
        revised(mass, each.on),
      ],
      'cannot-tell',
    ),
  );
}

function unitsListed(facts: Facts, mass: Mass): readonly Clause[] {
  return unitsNoted(facts, mass).map(({ id, on, noted }) => {
    if (on === null) return unknown('unit-listed', [`configuration.units.${id}.fitted`], { source });
    // Its change answers for the unit, and is judged above.
    return noted ? met('unit-among-changes', { source, evidence: [id] }) : revised(mass, on);
  });
}

function removalsListed(facts: Facts, mass: Mass): readonly Clause[] {
  return lacksRemoval(facts, mass) ? [unknown('removals-listed', ['configuration.mass.changesSince'], { source })] : [];
}

function revised(mass: Mass, on: string): Leaf {
  const last = mass.equipmentListRevisedOn;
  return fact(last === null ? null : last >= on, 'list-revised-since', 'configuration.mass.equipmentListRevisedOn', {
    source,
  });
}
