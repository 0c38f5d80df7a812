import type { ListName } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { met, unknown } from '../verdict/build.js';
import type { Draft } from '../verdict/result.js';
import { findOut } from './gaps.js';

/**
 * What nobody listed binds all the same: without a person who stated the list complete, nobody can tell. The rule has the
 * messages `stated` and `unstated`.
 */
export function statedComplete(facts: Facts, list: ListName, source: SourceRef): Draft {
  const stated = facts.complete(list);
  const clause =
    stated === null
      ? unknown('list-complete', [`status.completeness.${list}`], { source })
      : met('list-complete', { source });
  return {
    subject: `${list}-list`,
    clause,
    messages: { met: 'stated', 'not-met': 'unstated', 'cannot-tell': 'unstated', 'not-applicable': 'stated' },
    data: { asOf: stated?.asOf ?? null },
    effects: [{ stops: 'capability', capability: 'fly' }],
    remedies: findOut(clause, 'completeness.state', list),
  };
}
