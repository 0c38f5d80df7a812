import type { RecordHead } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { fact, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';
import { cfr } from './cite.js';

/** The entry is made before anybody flies (91.407(a)(2)), and 43.11(a) puts the total time in service in it; 43.9 asks for none. */
export const entryOfInspection = cfr('43.11(a)');
const label = 'total-time-in-service';

/** Total time in service in the entry of an inspection: what is not known to hold all that 43.11(a) asks is not known to be that entry. */
export function totalTimeEntered(facts: Facts, { id, kind, meters }: RecordHead): readonly Leaf[] {
  // Issuing an airworthiness certificate approves nothing for return to service.
  if (kind === 'airworthiness-certificate-inspection') return [];
  const extra = { source: entryOfInspection, evidence: [id] };
  const { timeInService } = facts.dossier.meters;
  const path = `status.records.${id}.meters`;
  if (timeInService === null)
    return [unknown(label, ['meters.timeInService', ...(meters.length > 0 ? [] : [path])], extra)];
  return [fact(meters.some((each) => each.meter === timeInService) ? true : null, label, path, extra)];
}
