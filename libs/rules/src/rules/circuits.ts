import { roundTo } from '../calculations/rounding.js';
import type { Circuit, Electrical } from '../dossier/installation.js';
import { drawsNothing } from '../catalogue/type.js';
import type { SourceRef } from '../facts/source.js';
import { continuousLoadShare, lowVoltageLightV, wireTable } from '../facts/wire.js';
import type { Awg, WireRow } from '../facts/wire.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { met, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';
import type { Effect } from '../verdict/result.js';
import { advice } from './effects.js';

const mostFt = 1_000_000;

/** Paths of what nobody recorded of a circuit, of the facts asked about. */
export function missingOf(circuit: Circuit, ...facts: readonly (keyof Circuit)[]): readonly string[] {
  return facts.flatMap((each) =>
    circuit[each] === null ? [`configuration.electrical.circuits.${circuit.id}.${each}`] : [],
  );
}

/** A circuit whose load somebody looked at stops the release; one that has been there for years is advice. */
export function effectsOf({ loadA, usedIn, ampacity }: Circuit): readonly Effect[] {
  return loadA === null && usedIn === null && ampacity === null ? advice : [{ stops: 'plan' }, { stops: 'release' }];
}

/** The row of table 11-9; null: gauge not recorded, or in no row. */
export function rowOf({ wireAwg }: Circuit): WireRow | null {
  return wireTable.value.find(({ awg }) => awg === wireAwg) ?? null;
}

/** Null: not recorded, or a length that no aircraft has. */
export function lengthOf({ wireLengthFt }: Circuit): number | null {
  return wireLengthFt !== null && wireLengthFt <= mostFt ? wireLengthFt : null;
}

/** 12 and 24 V batteries belong to the systems called 14 and 28 V; any other voltage is its own. Null: not recorded. */
export function nominalV({ busV }: Pick<Electrical, 'busV'>): number | null {
  if (busV === null) return null;
  if (busV >= 12 && busV <= 15) return 14;
  return busV >= 24 && busV <= 29 ? 28 : busV;
}

/** Volts below which a light for low voltage would trip. Null: of a system like this the circular names none. */
export function lowVoltageLightOf(electrical: Pick<Electrical, 'busV'>): number | null {
  const nominal = nominalV(electrical);
  return nominal === 14 || nominal === 28 ? lowVoltageLightV.value[nominal] : null;
}

/** A gauge as the trade writes it: 8, 0, 00, 000. */
export function gaugeName(awg: Awg): string {
  return awg < 0 ? '0'.repeat(1 - awg) : String(awg);
}

/** The most that the continuous load may be: all of the output where a placard or monitoring watches it, else a share. Null: output not recorded. */
export function loadLimitOf({ alternatorA, loadWatch }: Electrical): number | null {
  if (alternatorA === null) return null;
  const watched = loadWatch === 'placard' || loadWatch === 'monitoring';
  return watched ? alternatorA : roundTo(alternatorA * continuousLoadShare.value, 2);
}

/** Units in use that the aircraft feeds; a portable device runs on its own battery. */
export function unitsOnTheBus(facts: Facts): readonly UnitFacts[] {
  return [...facts.units.values()].filter(({ active, functions }) => active && !functions.has('portable-display'));
}

/** Without a list that somebody stated complete, and a circuit for each unit that may draw, a sum is of some loads only. */
export function everyLoadOnACircuit(facts: Facts, { circuits }: Electrical, source: SourceRef): Leaf {
  const adrift = unitsOnTheBus(facts).some(
    ({ id, type }) => (type === null || !drawsNothing(type)) && !circuits.some(({ units }) => units.includes(id)),
  );
  const missing = [
    ...(facts.complete('equipment') === null ? ['status.completeness.equipment'] : []),
    ...(circuits.length === 0 || adrift ? ['configuration.electrical.circuits'] : []),
  ];
  return missing.length > 0
    ? unknown('every-load-on-a-circuit', missing, { source })
    : met('every-load-on-a-circuit', { source });
}
