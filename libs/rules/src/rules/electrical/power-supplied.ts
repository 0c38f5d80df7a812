import { drawsNothing } from '../../catalogue/type.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { maker, practice } from '../cite.js';
import { unitsOnTheBus } from '../circuits.js';
import { lostThrough, planAndRelease } from '../effects.js';
import { findOut, missingNames } from '../gaps.js';
import { defineRule } from '../rule.js';

const general = practice('a unit works on a circuit of its own bus, at a voltage that its manual lets it be fed with');

/** The power end of a means. Where catalogue or wiring record are silent, the approval of this installation stands in; it outweighs no voltage. */
export const powerSupplied = defineRule(
  {
    id: 'power-supplied',
    topic: 'electrical',
    asks: 'A unit that draws current hangs on a circuit, and the bus gives a voltage that its manual lets it be fed with.',
    binds:
      'Catalogued units in use whose manual does not say that they draw nothing, portable devices aside; it costs what goes through them.',
    sources: [general],
    messages: {
      fed: '{unit} is fed from the {bus} V bus.',
      wrong: '{unit} takes {least} to {most} V, and the bus gives {bus} V.',
      unclear: 'Whether {unit} is fed as its manual asks cannot be told; not recorded: {unrecorded}.',
    },
    establishes: [],
  },
  (facts) =>
    unitsOnTheBus(facts).flatMap((each) => {
      const { type } = each;
      if (type === null || (drawsNothing(type) && type.supplyV === null)) return [];
      const clause = allOf('fed', [voltage(facts, each, type), circuit(facts, each)], 'cannot-tell');
      return [
        {
          subject: each.id,
          clause,
          messages: { met: 'fed', 'not-met': 'wrong', 'cannot-tell': 'unclear', 'not-applicable': 'fed' },
          data: {
            unit: each.unit.name,
            bus: facts.dossier.configuration.electrical?.busV ?? null,
            least: type.supplyV?.least ?? null,
            most: type.supplyV?.most ?? null,
            unrecorded: missingNames(clause) ?? 'nothing',
          },
          effects: [...planAndRelease, ...lostThrough(each.id, facts.capabilitiesThrough(each.id))],
          remedies: [
            { kind: 'do' as const, change: 'unit.remove', subject: each.id, facts: [] },
            ...findOut(clause, 'electrical.set', each.id),
          ],
        },
      ];
    }),
);

function voltage(facts: Facts, unit: UnitFacts, { supplyV, document }: EquipmentType): Clause {
  const busV = facts.dossier.configuration.electrical?.busV ?? null;
  if (supplyV === null) return approved(unit, 'voltage-of-its-manual', `catalogue.${unit.id}.supplyV`);
  const source = maker(document, 'supply');
  if (busV === null) return unknown('bus-voltage-recorded', ['configuration.electrical.busV'], { source });
  const extra = { source, value: { amount: busV, unit: 'V' } };
  return busV >= supplyV.least && busV <= supplyV.most
    ? met('voltage-of-its-manual', { ...extra, limit: { amount: supplyV.most, unit: 'V' } })
    : notMet('voltage-of-its-manual', {
        ...extra,
        limit: { amount: busV < supplyV.least ? supplyV.least : supplyV.most, unit: 'V' },
      });
}

function circuit(facts: Facts, unit: UnitFacts): Clause {
  const circuits = facts.dossier.configuration.electrical?.circuits ?? [];
  const found = circuits.find((each) => each.units.includes(unit.id));
  return found
    ? met('on-a-circuit', { source: general, evidence: [found.id] })
    : approved(unit, 'on-a-circuit', 'configuration.electrical.circuits');
}

/** Not met by silence: the approval of this installation, or a named person who accepted it as found, covers how it is fed; else nobody knows. */
function approved(each: UnitFacts, label: string, path: string): Clause {
  const { approval } = each.unit;
  if (approval === null) return unknown(label, [path], { source: general });
  if (approval.basis === 'as-found') return unitAcceptedAsFound(each);
  return met(label, { source: maker(approval.document.title, 'approval of this installation') });
}
