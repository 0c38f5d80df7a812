import type { FunctionCode } from '../catalogue/type.js';
import type { EquipmentItem } from '../dossier/aircraft.js';
import { equipmentItem } from '../dossier/aircraft.js';
import type { EquipmentCondition, EquipmentNeed } from '../facts/equipment.js';
import { certificatedAfter1996Since } from '../facts/old-part-23.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { allOf, fact, flight, implies, met, not, notApplicable, notMet, unknown } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import type { Capability } from '../verdict/capability.js';
import type { Draft } from '../verdict/result.js';
import { cfr, reading } from './cite.js';
import { asked, findOut, joined, missingNames } from './gaps.js';
import { noSubstitute } from './no-substitute.js';
import { forHire } from './purposes.js';

/** Words that every list of 91.205 uses; each rule adds its own `fitted`. */
export const itemMessages = {
  absent: 'Not fitted or not in use: {absent}.',
  unclear: 'Cannot be told; not recorded: {unrecorded}; not fitted: {absent}.',
  excepted: '91.205 asks none of this of this aircraft on this flight.',
} as const;

/** A statement on some items of 91.205, asked of the aircraft that the section binds. */
export function itemsDraft(facts: Facts, items: Clause, capability: Capability, subject = 'aircraft'): Draft {
  const clause = implies(boundBy91205(facts), items);
  const absent = asked(items).filter((leaf) => leaf.inside === 'not-met' && absence.test(leaf.label));
  return {
    subject,
    clause,
    messages: { met: 'fitted', 'not-met': 'absent', 'cannot-tell': 'unclear', 'not-applicable': 'excepted' },
    data: {
      // Two paragraphs may ask for one item.
      absent: joined([...new Set(absent.map((leaf) => leaf.label.replace(absence, '')))]) ?? 'none',
      unrecorded: missingNames(clause) ?? 'none',
    },
    effects: [{ stops: 'capability', capability }],
    remedies: [
      { kind: 'do', change: 'equipment.state', subject: 'aircraft', facts: [] },
      ...findOut(clause, 'equipment.state', 'aircraft'),
    ],
  };
}

/** What every flight needs, and apart from it what only flights for hire need. */
export function itemsDrafts(
  facts: Facts,
  label: string,
  needs: readonly EquipmentNeed[],
  capability: Capability,
): readonly Draft[] {
  const hire = needs.filter((each) => each.when.includes('for-hire'));
  const always = needs.filter((each) => !each.when.includes('for-hire'));
  return [
    itemsDraft(facts, needsClause(facts, label, always), capability),
    itemsDraft(facts, needsClause(facts, `${label}-for-hire`, hire), capability, 'for-hire'),
  ];
}

const absence = /-(fitted|deactivated)$/;

/** Functions of units that make an item up: with all of them deactivated the item is not there. */
const servedBy: Readonly<Partial<Record<EquipmentItem, readonly FunctionCode[]>>> = {
  altimeter: ['altimeter'],
  'sensitive-altimeter': ['altimeter'],
  'pitch-and-bank': ['attitude'],
  'direction-gyro': ['direction'],
  'dme-or-rnav': ['dme', 'gnss'],
};

/** Items that a unit makes up. */
export function itemsServedBy(unit: UnitFacts): readonly EquipmentItem[] {
  return equipmentItem.options.filter((item) => {
    const functions = servedBy[item];
    return functions?.some((each) => unit.functions.has(each)) && !standsForNothing(unit, functions);
  });
}

/** 91.205(a): powered aircraft with a standard airworthiness certificate. */
export function boundBy91205(facts: Facts): Clause {
  const { certificate, engine, kind } = facts.dossier.configuration.aircraft;
  const source = cfr('91.205(a)');
  const path = 'configuration.aircraft';
  const powered = kind === 'airplane' || kind === 'helicopter' || (engine === null ? null : engine !== 'none');
  return allOf(
    'bound-by-91.205',
    [
      fact(certificate === null ? null : certificate === 'standard', 'standard-certificate', `${path}.certificate`, {
        source,
      }),
      fact(kind === 'balloon' ? false : powered, 'powered', `${path}.engine`, { source }),
    ],
    'cannot-tell',
  );
}

/** Each item where its conditions hold. The emergency transmitter has a rule of its own. */
export function needsClause(facts: Facts, label: string, needs: readonly EquipmentNeed[]): Clause {
  const clauses = needs.flatMap((need): Clause[] => {
    const item = itemOf(need);
    return item === null ? [] : [whereNeeded(facts, need, itemFitted(facts, item, need.source))];
  });
  // The list itself is never empty: nothing left means that nothing of it binds this flight.
  return allOf(label, clauses, 'not-applicable');
}

/** A clause that binds only where the conditions of an item hold. */
export function whereNeeded(facts: Facts, need: EquipmentNeed, body: Clause): Clause {
  const conditions = need.when.flatMap((each) => conditionOf(facts, each, need.source) ?? []);
  return conditions.length === 0 ? body : implies(allOf('item-needed', conditions, 'met'), body);
}

export function itemOf(need: EquipmentNeed): EquipmentItem | null {
  return equipmentItem.options.find((each) => each === need.item) ?? null;
}

/** An item is fitted if a person saw it and the units that make it up are not all deactivated. Operable: see the open defects. */
export function itemFitted(facts: Facts, item: EquipmentItem, source: SourceRef): Leaf {
  const state = facts.dossier.configuration.equipment.find((each) => each.item === item);
  const path = `configuration.equipment.${item}`;
  if (!state) return unknown(`${item}-fitted`, [path], { source });
  if (state.state === 'absent') return notMet(`${item}-fitted`, { source });
  if (state.seen === null) return unknown(`${item}-seen-by-a-person`, [path], { source });
  // Only where no fact of the aircraft settles it may the record say that the item is not asked for.
  if (state.state === 'not-required')
    return settledByRecord.has(item)
      ? notApplicable(`${item}-not-required`, { source })
      : unknown(`${item}-recorded-as-not-required`, [path], { source });
  const functions = servedBy[item] ?? [];
  const units = [...facts.units.values()];
  const having = units.filter((unit) => functions.some((each) => unit.functions.has(each)));
  const serving = having.filter((unit) => !standsForNothing(unit, functions));
  if (serving.length === 0 && having.length > 0) {
    if (having.some((unit) => unit.id === state.unitId)) return notMet(`${item}-fitted`, { source });
    if (state.unitId === null) return unknown(`${item}-made-up-by-a-unit`, [`${path}.unitId`], { source });
  }
  if (serving.some((unit) => unit.active)) return met(`${item}-fitted`, { source });
  if (serving.length > 0) return notMet(`${item}-deactivated`, { source });
  // A unit of which nothing is known may be the item, and then deactivated or no substitute for it.
  const vague = units.some(
    ({ id, active, functions: known }) => known.size === 0 && (!active || state.unitId === null || state.unitId === id),
  );
  return functions.length > 0 && vague
    ? unknown(`${item}-made-up-by-a-unit`, [path], { source })
    : met(`${item}-fitted`, { source });
}

/** A portable device, or a display that its manual lets stand in for no required instrument. */
function standsForNothing(unit: UnitFacts, functions: readonly FunctionCode[]): boolean {
  return unit.functions.has('portable-display') || functions.some((each) => noSubstitute(unit, each) !== null);
}

/** Oil pressure "for each engine using a pressure system", fuses "if protected by fuses": the dossier has no fact of its own for these. */
const settledByRecord: ReadonlySet<EquipmentItem> = new Set(['oil-pressure', 'spare-fuses']);

/** Null: nothing to ask, the condition always holds here or is settled elsewhere. */
function conditionOf(facts: Facts, condition: EquipmentCondition, source: SourceRef): Clause | null {
  const { aircraft } = facts.dossier.configuration;
  const path = 'configuration.aircraft';
  const isKind = (kind: string) => (aircraft.kind === kind ? met(`is-${kind}`) : notMet(`is-${kind}`));
  const madeAfter = (day: string) =>
    fact(
      aircraft.manufactured === null ? null : aircraft.manufactured > day,
      `made-after-${day}`,
      `${path}.manufactured`,
      { source },
    );
  switch (condition) {
    case 'liquid-cooled':
      return fact(aircraft.liquidCooled, 'liquid-cooled', `${path}.liquidCooled`, { source });
    case 'air-cooled':
      return not(fact(aircraft.liquidCooled, 'air-cooled', `${path}.liquidCooled`, { source }));
    case 'altitude-engine':
      return fact(aircraft.altitudeEngine, 'altitude-engine', `${path}.altitudeEngine`, { source });
    case 'retractable-gear':
      return fact(aircraft.retractableGear, 'retractable-gear', `${path}.retractableGear`, { source });
    case 'small-airplane-part-23-after-1996-03-11':
      return allOf(
        'small-airplane-part-23-after-1996-03-11',
        [
          isKind('airplane'),
          fact(
            aircraft.basis === null ? null : aircraft.basis.code === 'part-23',
            'certificated-under-part-23',
            `${path}.basis`,
            { source },
          ),
          certificatedAfter1996(facts, source),
        ],
        'cannot-tell',
      );
    case 'made-after-1978-07-18-front-seats':
      return allOf(condition, [isKind('airplane'), madeAfter('1978-07-18')], 'cannot-tell');
    case 'made-after-1986-12-12-all-seats':
      return allOf(condition, [isKind('airplane'), madeAfter('1986-12-12')], 'cannot-tell');
    case 'rotorcraft-made-after-1992-09-16':
      return allOf(condition, [isKind('helicopter'), madeAfter('1992-09-16')], 'cannot-tell');
    case 'for-hire':
      return flight(
        'for-hire',
        { purpose: forHire },
        { source: reading('14 CFR 91.205', `${source.paragraph}: instruction in a provided aircraft counts as hire`) },
      );
    case 'over-water-beyond-glide':
      return flight('over-water-beyond-glide', { overWaterBeyondGlide: true }, { source });
    case 'oil-pressure-system':
    case 'protected-by-fuses':
    case 'us-registered':
    case 'not-part-121':
    case 'occupant-aged-two':
    case 'elt-required':
    case 'no-third-attitude-system':
    case 'vor-required':
      return null;
  }
}

/**
 * 91.205(b)(11) counts from the certification, whose day the record does not hold. An airplane made by then was certificated by then, and
 * an amendment of that day on says that the basis is later; one made since under an older amendment may be either.
 */
function certificatedAfter1996(facts: Facts, source: SourceRef): Leaf {
  const { basis, manufactured } = facts.dossier.configuration.aircraft;
  const label = 'certificated-after-1996-03-11';
  const path = 'configuration.aircraft';
  if (manufactured !== null && manufactured <= '1996-03-11') return notMet(label, { source });
  const amendment = basis?.amendment ?? null;
  if (amendment !== null && amendment >= certificatedAfter1996Since.value)
    return met(label, { source: certificatedAfter1996Since.source });
  const open = [
    ...(amendment === null ? [basis === null ? `${path}.basis` : `${path}.basis.amendment`] : []),
    ...(manufactured === null ? [`${path}.manufactured`] : []),
  ];
  if (open.length > 0) return unknown(label, open, { source });
  // Only somebody who knows the day can say that the lights are not required.
  const stated = facts.dossier.configuration.equipment.find(({ item }) => item === 'anticollision-lights');
  return stated?.state === 'not-required' && stated.seen !== null
    ? notMet(label, { source })
    : unknown(label, ['configuration.equipment.anticollision-lights.notRequired'], { source });
}
