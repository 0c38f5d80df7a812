import type { FunctionCode, SignalCode } from '../catalogue/type.js';
import type { SourceRef } from '../facts/source.js';
import type { Chain } from '../graph/chains.js';
import type { Facts } from '../graph/facts.js';
import { mayServe } from '../graph/units.js';
import { notMet, unknown } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import type { Remedy } from '../verdict/result.js';
import { missingPaths } from './gaps.js';
import { findOut } from './remedies.js';

const stated = 'status.completeness.links';

/**
 * No joint of a kind: certain only where the list of joints was stated complete. `unclear`: what is not recorded of joints that
 * are there, so that one of them may be it.
 */
export function noJoint(facts: Facts, label: string, source: SourceRef, unclear: readonly string[] = []): Leaf {
  if (unclear.length > 0) return unknown(label, unclear, { source });
  return facts.complete('links') === null ? unknown(label, [stated], { source }) : notMet(label, { source });
}

/** The same of a joint by which a source of guidance reaches an indicator, straight or through a selector. */
export function noIndicator(
  facts: Facts,
  { source }: Chain,
  deviation: 'lateral-deviation' | 'vertical-deviation',
  cited: SourceRef,
): Leaf {
  const selectors = facts.links.flatMap((link) =>
    link.fromUnit === source.id && facts.units.get(link.toUnit)?.functions.has('source-selector') ? [link.toUnit] : [],
  );
  const unclear = unclearJoints(facts, [source.id, ...selectors], [deviation], [deviation, 'source-selector']);
  return noJoint(facts, `${deviation}-shown`, cited, unclear);
}

/** What is not recorded of joints from these units: the signal of one that ends at a unit with such a function, or what the unit at its end does. */
export function unclearJoints(
  facts: Facts,
  from: readonly string[],
  signals: readonly SignalCode[],
  ends: readonly FunctionCode[],
): readonly string[] {
  const paths = facts.links.flatMap((link) => {
    const end = facts.units.get(link.toUnit);
    if (!from.includes(link.fromUnit) || !end || !mayServe(end)) return [];
    const signal = facts.signalOf(link);
    const vague = end.functions.size === 0;
    if (signal === null) return vague || ends.some((code) => end.functions.has(code)) ? ['configuration.links'] : [];
    return vague && signals.includes(signal) ? [`configuration.units.${end.id}.typeId`] : [];
  });
  return [...new Set(paths)];
}

/** To join the unit; to state the list complete, or look at the joints, where that would tell; and to find out what is missing of units and openings. */
export function joining({ dossier }: Facts, clause: Clause, unitId: string): readonly Remedy[] {
  const missing = missingPaths(clause);
  const ask = (change: string, subject: string, under: string) => {
    const paths = missing.filter((each) => each === under || each.startsWith(`${under}.`));
    return paths.length === 0 ? [] : [findOut(change, subject, ...paths)];
  };
  const { units, openings } = dossier.configuration;
  return [
    { kind: 'do', change: 'link.connect', subject: unitId, facts: [] },
    ...ask('completeness.state', 'links', stated),
    ...ask('link.connect', unitId, 'configuration.links'),
    ...units.flatMap(({ id }) => ask('unit.amend', id, `configuration.units.${id}`)),
    ...openings.flatMap(({ id }) => ask('opening.set', id, `configuration.openings.${id}`)),
  ];
}
