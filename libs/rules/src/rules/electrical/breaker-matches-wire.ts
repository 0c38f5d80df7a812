import { protectorFor } from '../../calculations/wire.js';
import { protectorTable, wireTable } from '../../facts/wire.js';
import type { SourceRef } from '../../facts/source.js';
import type { Circuit } from '../../dossier/installation.js';
import { anyOf, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { ac } from '../cite.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const justified = ac('43.13-1B', '11-48', 'change 1');
const openAir = ac('43.13-1B', '11-49', 'change 1');
const unprotected: SourceRef = {
  document: '14 CFR',
  paragraph: '23.1357(a)',
  edition: 'before amendment 23-64',
  status: 'verified',
};

/** One statement a circuit. The chart is a conservative guide: above it nothing is proved wrong, but nobody is let through without the data. */
export const breakerMatchesWire = defineRule(
  {
    id: 'breaker-matches-wire',
    topic: 'electrical',
    asks: 'The protector of a circuit is rated no higher than the chart allows for its wire.',
    binds: 'Every recorded circuit with copper wire.',
    sources: [protectorTable.source, justified, openAir, unprotected],
    messages: {
      guarded: '{circuit}: {ratingA} A guards the wire (chart {chartA} A).',
      unclear: '{circuit}: {ratingA} A against chart {chartA} A asks for data on load and wire before it can be told.',
    },
    establishes: [],
  },
  (facts) =>
    (facts.dossier.configuration.electrical?.circuits ?? []).map((circuit) => ({
      subject: circuit.id,
      clause: judge(circuit),
      messages: { met: 'guarded', 'not-met': 'unclear', 'cannot-tell': 'unclear', 'not-applicable': 'guarded' },
      data: { circuit: circuit.name, ratingA: circuit.ratingA, chartA: chartRating(circuit) },
      effects: [{ stops: 'release' as const }],
      remedies: [findOut('electrical.set', circuit.id, ...missing(circuit))],
    })),
);

function judge(circuit: Circuit): Clause {
  const { ratingA, protector } = circuit;
  if (protector === 'none') return unknown('protector-may-be-left-out', [], { source: unprotected });
  const most = chartRating(circuit);
  if (ratingA === null || most === null)
    return unknown('within-chart', missing(circuit), { source: protectorTable.source });
  const sizes = { value: { amount: ratingA, unit: 'A' }, limit: { amount: most, unit: 'A' } };
  if (ratingA <= most) return met('within-chart', { source: protectorTable.source, ...sizes });
  return anyOf(
    'above-chart',
    [oneSizeUp(circuit, ratingA, most), unknown('justified-by-data', [], { source: justified, ...sizes })],
    'cannot-tell',
  );
}

/** A single wire in open air may take the next larger breaker of the chart. */
function oneSizeUp({ id, protector, singleWireInOpenAir }: Circuit, ratingA: number, most: number): Clause {
  const larger = protectorTable.value.map((row) => row.breakerA ?? 0).filter((each) => each > most);
  const path = `configuration.electrical.circuits.${id}.singleWireInOpenAir`;
  const allowed = protector === 'breaker' && larger.length > 0 && ratingA <= Math.min(...larger);
  return allowed && singleWireInOpenAir === true
    ? met('single-wire-in-open-air', { source: openAir })
    : unknown('single-wire-in-open-air', allowed && singleWireInOpenAir === null ? [path] : [], { source: openAir });
}

/** Null: the gauge is not recorded, or the chart lists no such protector for it. */
function chartRating({ protector, wireAwg }: Circuit): number | null {
  const row = wireTable.value.find(({ awg }) => awg === wireAwg);
  if (row === undefined || protector === 'none') return null;
  const { breakerA, fuseA } = protectorFor(row.awg);
  return protector === 'breaker' ? breakerA : fuseA;
}

function missing({ id, ratingA, wireAwg }: Circuit): readonly string[] {
  const path = `configuration.electrical.circuits.${id}`;
  return [...(ratingA === null ? [`${path}.ratingA`] : []), ...(wireAwg === null ? [`${path}.wireAwg`] : [])];
}
