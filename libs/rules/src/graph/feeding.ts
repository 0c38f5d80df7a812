import type { Graph } from './facts.js';
import type { UnitFacts } from './units.js';

/** Units that send deviation to the indicator, through selectors if need be; also one of which nothing is known but that it sends. */
export function feeding(graph: Graph, indicator: UnitFacts): ReadonlySet<string> {
  const found = new Set<string>(
    graph.chains.some((chain) => chain.source === indicator && chain.indicator === indicator) ? [indicator.id] : [],
  );
  const seen = new Set<string>();
  const queue = [indicator.id];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    if (seen.has(at)) continue;
    seen.add(at);
    for (const unit of sendersTo(graph, at)) {
      if (unit.functions.has('source-selector')) queue.push(unit.id);
      else found.add(unit.id);
    }
  }
  return found;
}

/** Units joined straight to it that send deviation. */
export function sendersTo(graph: Graph, unitId: string): readonly UnitFacts[] {
  return graph.links.flatMap((link) => {
    const signal = graph.signalOf(link);
    const unit = graph.units.get(link.fromUnit);
    return link.toUnit === unitId && (signal === 'lateral-deviation' || signal === 'vertical-deviation') && unit?.active
      ? [unit]
      : [];
  });
}
