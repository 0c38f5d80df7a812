import type { Statement } from '../dossier/common.js';
import type { UnitFacts } from '../graph/units.js';
import { met, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { practice } from './cite.js';

const adopted = practice('a named person accepts the installation as found at intake');

/** A unit that somebody accepted as it sat there. For what sitting there proves: that it fits, that its joints work. */
export function unitAcceptedAsFound({ id, unit }: UnitFacts): Clause {
  if (unit.approval === null || unit.approval.basis !== 'as-found')
    return notMet('accepted-as-found', { source: adopted });
  return accepted(unit.approval.acceptedBy, `configuration.units.${id}.approval.acceptedBy`);
}

/** An adoption counts only with a name and a day. */
export function accepted(by: Statement | null, path: string): Clause {
  return by === null
    ? unknown('accepted-as-found', [path], { source: adopted })
    : met('accepted-as-found', { source: adopted });
}
