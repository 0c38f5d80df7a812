import type { FunctionCode } from '../catalogue/type.js';
import type { Defect } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { met, notMet, unknown } from '../verdict/build.js';
import type { Capability } from '../verdict/capability.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import type { Draft, Remedy } from '../verdict/result.js';
import { maker } from './cite.js';
import { findOut } from './gaps.js';

/** Units with one of the functions, in use or not; a portable device is no fitted one. */
export function fittedWith(facts: Facts, ...functions: readonly FunctionCode[]): readonly UnitFacts[] {
  return [...facts.units.values()].filter(
    (each) => !each.functions.has('portable-display') && functions.some((code) => each.functions.has(code)),
  );
}

export type UnitState = 'working' | 'inoperative' | 'deactivated';

/** Deactivated with its paper, recorded as inoperative, or neither. Not fitted is a matter of the whole aircraft. */
export function stateOf(facts: Facts, unit: UnitFacts): UnitState {
  if (!unit.active) return 'deactivated';
  return inoperativeBy(facts, unit).length > 0 ? 'inoperative' : 'working';
}

/** Entries that the unit is inoperative, deferred or not. */
function inoperativeBy({ dossier }: Facts, { id }: UnitFacts): readonly Defect[] {
  return dossier.status.defects.filter((each) => each.subject === id && each.kind === 'inoperative-item');
}

export function operable(state: UnitState, source: SourceRef): Leaf {
  return state === 'working' ? met('operable', { source }) : notMet(state, { source });
}

/**
 * The unit's standard is one that the rule names. `family` tells which authorisations speak of it at all: a type authorised only to
 * others than the named ones of the family does not meet it. Where the catalogue is silent, the approval of this installation stands in.
 */
export function builtTo(
  { id, unit, type }: UnitFacts,
  family: (tso: string) => boolean,
  named: (tso: string) => boolean,
  source: SourceRef,
): Clause {
  const spoken = (type?.authorisations ?? []).map((each) => each.tso).filter(family);
  if (spoken.some(named)) return met('standard-named-by-rule', { source });
  if (spoken.length > 0) return notMet('standard-named-by-rule', { source });
  return unit.approval === null
    ? unknown('standard-named-by-rule', [`configuration.units.${id}.typeId`, `configuration.units.${id}.approval`], {
        source,
      })
    : met('installation-approved', { source: maker(unit.approval.document.title, 'approval of this installation') });
}

/** What brings a unit back that is not in use: to repair it is to close each entry that it is inoperative. None where it works. */
export function backInUse(facts: Facts, unit: UnitFacts): readonly Remedy[] {
  if (!unit.active) return [{ kind: 'do', change: 'unit.reactivate', subject: unit.id, facts: [] }];
  return inoperativeBy(facts, unit).map(({ id }) => ({ kind: 'do', change: 'defect.close', subject: id, facts: [] }));
}

/** The same; and where it works, but is not what the rule asks for: another in its place. */
export function waysOut(facts: Facts, unit: UnitFacts): readonly Remedy[] {
  const back = backInUse(facts, unit);
  return back.length > 0 ? back : [{ kind: 'do', change: 'unit.install', subject: unit.id, facts: [] }];
}

/** No unit of a kind: certain only where the list of equipment was stated complete. */
export function noneFitted(facts: Facts, label: string, source: SourceRef): Leaf {
  return facts.complete('equipment') === null
    ? unknown(label, ['status.completeness.equipment', 'configuration.units'], { source })
    : notMet(label, { source });
}

/** The same as a statement on the aircraft as a whole. The rule has the messages `none` and `unrecorded`. */
export function noUnit(facts: Facts, label: string, capability: Capability, source: SourceRef): Draft {
  const clause = noneFitted(facts, label, source);
  return {
    subject: 'aircraft',
    clause,
    messages: { met: 'none', 'not-met': 'none', 'cannot-tell': 'unrecorded', 'not-applicable': 'none' },
    data: { unit: null },
    effects: [{ stops: 'capability', capability }],
    remedies: [
      { kind: 'do', change: 'unit.install', subject: 'aircraft', facts: [] },
      ...findOut(clause, 'completeness.state', 'aircraft'),
    ],
  };
}
