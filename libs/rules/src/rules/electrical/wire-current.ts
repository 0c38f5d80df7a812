import { bundleCurrent } from '../../calculations/wire.js';
import { wireTable } from '../../facts/wire.js';
import type { SourceRef } from '../../facts/source.js';
import type { Circuit } from '../../dossier/installation.js';
import { fact, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { effectsOf, missingOf, rowOf } from '../circuits.js';
import { ac } from '../cite.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const curves = ac('43.13-1B', '11-66d to f, 11-69', 'change 1');

/** One statement a circuit. The curves are not held here: a factor read off them is a recorded input, else the table speaks, and only where its note fits. */
export const wireCurrent = defineRule(
  {
    id: 'wire-current',
    topic: 'electrical',
    asks: 'The wire of a circuit carries its load: by factors read off the curves, or by table 11-9 where its note 1 fits.',
    binds: 'Every recorded circuit with copper wire; advice where nobody looked at its load.',
    sources: [wireTable.source, curves],
    messages: {
      carries: '{circuit}: the wire may carry {mayA} A and carries {loadA} A.',
      overloaded: '{circuit}: the wire may carry {mayA} A, but carries {loadA} A.',
      unclear: 'Whether the wire of {circuit} carries its load cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    (facts.dossier.configuration.electrical?.circuits ?? []).map((circuit) => ({
      subject: circuit.id,
      clause: judge(circuit),
      messages: { met: 'carries', 'not-met': 'overloaded', 'cannot-tell': 'unclear', 'not-applicable': 'carries' },
      data: { circuit: circuit.name, mayA: allowed(circuit)?.amps ?? null, loadA: circuit.loadA },
      effects: effectsOf(circuit),
      remedies: [findOut('electrical.set', circuit.id, ...missing(circuit))],
    })),
);

function judge(circuit: Circuit): Clause {
  const may = allowed(circuit);
  if (may === null || circuit.loadA === null)
    return unknown('wire-carries-load', missing(circuit), {
      source: circuit.ampacity?.by === 'curves' ? curves : wireTable.source,
    });
  return fact(circuit.loadA <= may.amps, 'wire-carries-load', '', {
    source: may.source,
    value: { amount: circuit.loadA, unit: 'A' },
    limit: { amount: may.amps, unit: 'A' },
  });
}

/** Null: what it hangs on is not recorded. */
function allowed(circuit: Circuit): { readonly amps: number; readonly source: SourceRef } | null {
  const { ampacity, wireRating } = circuit;
  if (ampacity === null) return null;
  if (ampacity.by === 'table') {
    const row = rowOf(circuit);
    return row === null || wireRating === null ? null : { amps: row.bundleA[wireRating], source: wireTable.source };
  }
  const { freeAirA, bundleFactor, altitudeFactor } = ampacity;
  if (freeAirA === null || bundleFactor === null || altitudeFactor === null) return null;
  return { amps: bundleCurrent({ freeAirA, bundleFactor, altitudeFactor }), source: curves };
}

function missing(circuit: Circuit): readonly string[] {
  const { ampacity } = circuit;
  const path = `configuration.electrical.circuits.${circuit.id}.ampacity`;
  if (ampacity?.by === 'curves')
    return [
      ...missingOf(circuit, 'loadA'),
      ...(['freeAirA', 'bundleFactor', 'altitudeFactor'] as const).flatMap((each) =>
        ampacity[each] === null ? [`${path}.${each}`] : [],
      ),
    ];
  return missingOf(circuit, 'loadA', 'ampacity', 'wireAwg', 'wireRating');
}
