import { drawsNothing } from '../../catalogue/type.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { maker, practice } from '../cite.js';
import { advice, planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const general = practice('heat is what ends a radio early: air as its manual asks, intakes and exhaust clear');
const onGround = practice('a scoop brings no air on the ground, where the heat is worst');

/** One statement a unit whose manual speaks of its cooling, and as advice one where the catalogue is silent. */
export const coolingPath = defineRule(
  {
    id: 'cooling-path',
    topic: 'installation',
    asks: 'The unit gets the air that its manual asks for, also on the ground, and its intakes and exhaust are clear.',
    binds:
      'Catalogued units that warm up: a unit with a fan of its own needs no outside air, but clear intakes and exhaust; advice where the manual is silent.',
    sources: [general, onGround],
    messages: {
      cool: '{unit} has the air that it needs.',
      hot: '{unit} does not get the air that its manual asks for, or its intakes are not clear.',
      unclear: 'Whether {unit} gets the air that it needs cannot be told.',
      scoop:
        '{unit} has its air from a scoop, which brings none on the ground: what moves air to it there is not recorded.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((each) => {
      const { type } = each;
      if (type === null || !mayWarm(each, type)) return [];
      const path = `configuration.units.${each.id}.asBuilt`;
      return [
        {
          subject: each.id,
          clause: anyOf('cooled', [unitAcceptedAsFound(each), asItsManualAsks(each, type, path)], 'cannot-tell'),
          messages: {
            met: 'cool',
            'not-met': 'hot',
            'cannot-tell': byScoop(each, type) ? 'scoop' : 'unclear',
            'not-applicable': 'cool',
          },
          data: { unit: each.unit.name },
          effects: type.cooling === null ? advice : planAndRelease,
          remedies: [findOut('unit.amend', each.id, path)],
        },
      ];
    }),
);

/** What draws nothing by its manual stays cool; so does what its manual lets sit in still air with no clearance of its own. */
function mayWarm({ functions }: UnitFacts, type: EquipmentType): boolean {
  const { cooling } = type;
  if (functions.has('portable-display')) return false;
  return cooling === null ? !drawsNothing(type) : cooling.by !== 'still-air' || cooling.clearanceIn !== null;
}

/** Of the air, only what happens on the ground is open. */
function byScoop({ unit }: UnitFacts, { cooling }: EquipmentType): boolean {
  return cooling?.by === 'outside-air' && unit.asBuilt?.air === 'ram-air' && unit.asBuilt.airwaysClear === true;
}

function asItsManualAsks({ id, unit }: UnitFacts, { cooling }: EquipmentType, path: string): Clause {
  if (cooling === null) return unknown('cooling-of-manual', [`catalogue.${id}.cooling`], { source: general });
  const source = maker(cooling.document, 'cooling');
  const room = cooling.clearanceIn === null ? {} : { limit: { amount: cooling.clearanceIn, unit: 'in' } };
  return allOf(
    'air-as-manual-asks',
    [
      fact(unit.asBuilt?.airwaysClear ?? null, 'intakes-and-exhaust-clear', `${path}.airwaysClear`, {
        source,
        ...room,
      }),
      ...(cooling.by === 'outside-air' ? [airLed(unit.asBuilt?.air ?? null, path, cooling.document)] : []),
    ],
    'cannot-tell',
  );
}

function airLed(air: 'none' | 'ram-air' | 'blower' | null, path: string, document: string): Leaf {
  const source = maker(document, 'cooling');
  if (air === null) return unknown('outside-air-led-to-it', [`${path}.air`], { source });
  if (air === 'none') return notMet('outside-air-led-to-it', { source });
  return air === 'blower'
    ? met('outside-air-led-to-it', { source })
    : unknown('air-on-the-ground', [`${path}.air`], { source: onGround });
}
