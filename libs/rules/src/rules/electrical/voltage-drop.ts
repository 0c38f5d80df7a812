import { aluminiumInPlaceOf, smallestWireForDrop, wireVoltageDrop } from '../../calculations/wire.js';
import { aluminiumInPlace, copperTemperature, dropTable } from '../../facts/wire.js';
import type { Awg } from '../../facts/wire.js';
import type { Circuit, Electrical } from '../../dossier/installation.js';
import { met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { effectsOf, gaugeName, lengthOf, missingOf, nominalV, rowOf } from '../circuits.js';
import { ac } from '../cite.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const table = ac('43.13-1B', 'table 11-6', 'change 1');
const ratingC = { c105: 105, c150: 150, c200: 200 } as const;

/**
 * One statement a circuit, along the copper alone. How warm the conductor runs is not recorded: the drop is good if it is so at the temperature
 * that the wire is rated for, bad if it is not even at 20 C, and otherwise open.
 */
export const voltageDrop = defineRule(
  {
    id: 'voltage-drop',
    topic: 'electrical',
    asks: 'The drop from the bus to the ground of the equipment stays within the table, more of it for intermittent loads.',
    binds: 'Every recorded circuit with copper wire; advice where nobody looked at its load.',
    sources: [
      table,
      ...dropTable.slice(0, 1).map(({ intermittent }) => intermittent.source),
      copperTemperature.source,
      aluminiumInPlace.source,
    ],
    messages: {
      within: '{circuit} loses {dropV} V at 20 C, of {mostV} V, and keeps the limit when hot.',
      over: '{circuit} loses {dropV} V, more than the {mostV} V that it may; by the drop alone it takes {copper}, or {aluminium}.',
      unclear: 'Whether {circuit} keeps its voltage drop cannot be told ({dropV} V at 20 C, of {mostV} V).',
    },
    establishes: [],
  },
  (facts) => {
    const { electrical } = facts.dossier.configuration;
    if (electrical === null) return [];
    return electrical.circuits.map((circuit) => ({
      subject: circuit.id,
      clause: judge(circuit, electrical),
      messages: { met: 'within', 'not-met': 'over', 'cannot-tell': 'unclear', 'not-applicable': 'within' },
      data: {
        circuit: circuit.name,
        dropV: dropAt(circuit, 20),
        mostV: limitsOf(circuit, electrical)?.least ?? null,
        ...thickEnough(circuit, electrical),
      },
      effects: effectsOf(circuit),
      remedies: [findOut('electrical.set', circuit.id, ...missing(circuit, electrical))],
    }));
  },
);

function judge(circuit: Circuit, electrical: Electrical): Clause {
  const limits = limitsOf(circuit, electrical);
  const cold = dropAt(circuit, 20);
  const paths = missing(circuit, electrical);
  if (limits === null || cold === null) return unknown('drop-within-table', paths, { source: table });
  const hot = circuit.wireRating === null ? null : dropAt(circuit, ratingC[circuit.wireRating]);
  const { source } = limits;
  if (cold > limits.most) return notMet('drop-within-table', { source, ...volts(cold, limits.most) });
  return hot !== null && hot <= limits.least
    ? met('drop-within-table', { source, ...volts(hot, limits.least) })
    : unknown('drop-within-table', paths, {
        source: hot === null ? source : copperTemperature.source,
        ...volts(hot ?? cold, limits.least),
      });
}

/** A load that may be either keeps the tighter limit, and breaks only the wider one. */
function limitsOf({ intermittent }: Circuit, electrical: Electrical) {
  const row = dropTable.find(({ systemV }) => systemV === nominalV(electrical));
  if (!row) return null;
  const continuous = { least: row.continuous.value, source: row.continuous.source };
  if (intermittent === false) return { ...continuous, most: row.continuous.value };
  return intermittent === true
    ? { least: row.intermittent.value, most: row.intermittent.value, source: row.intermittent.source }
    : { ...continuous, most: row.intermittent.value };
}

/** Wires that keep the drop as hot as they may run, of copper and of aluminium; null where the wire that is there does not break it. */
function thickEnough(circuit: Circuit, electrical: Electrical): Record<'copper' | 'aluminium', string | null> {
  const limits = limitsOf(circuit, electrical);
  const run = runOf(circuit);
  if (limits === null || run === null || wireVoltageDrop(run) <= limits.most) return { copper: null, aluminium: null };
  const conductorC = ratingC[circuit.wireRating ?? 'c200'];
  const awg = smallestWireForDrop({ ...run, dropV: limits.least, conductorC });
  return {
    copper: wireName('copper', awg),
    aluminium: wireName('aluminium', awg === null ? null : aluminiumInPlaceOf(awg)),
  };
}

function wireName(metal: 'copper' | 'aluminium', awg: Awg | null): string {
  return awg === null ? `${metal} thicker than the table has` : `${metal} No. ${gaugeName(awg)}`;
}

function dropAt(circuit: Circuit, conductorC: number): number | null {
  const run = runOf(circuit);
  return run === null ? null : wireVoltageDrop({ ...run, conductorC });
}

/** Null: something of it is not recorded, or is in no table. */
function runOf(circuit: Circuit) {
  const row = rowOf(circuit);
  const lengthFt = lengthOf(circuit);
  if (row === null || lengthFt === null || circuit.loadA === null) return null;
  return { awg: row.awg, lengthFt, currentA: circuit.loadA };
}

function volts(value: number, limit: number) {
  return { value: { amount: value, unit: 'V' }, limit: { amount: limit, unit: 'V' } };
}

function missing(circuit: Circuit, electrical: Electrical): readonly string[] {
  return [
    ...(electrical.busV === null ? ['configuration.electrical.busV'] : []),
    ...missingOf(circuit, 'wireAwg', 'wireLengthFt', 'loadA', 'wireRating', 'intermittent'),
  ];
}
