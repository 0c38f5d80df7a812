import type { RecurringItem } from '../dossier/upkeep.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { unknown } from '../verdict/build.js';
import type { Draft, Effect } from '../verdict/result.js';
import { accomplished } from './accomplished.js';
import { maker, practice } from './cite.js';
import { findOut, missingOrReading } from './gaps.js';
import { intervalParts } from './in-interval.js';
import { recurring } from './recurring.js';
import { recordIt } from './remedies.js';
import { tasks } from './who-may.js';

export const itemMessages = {
  current: '{item}: done on {done}, in time.',
  lapsed: '{item}: not done within its interval; last done on {done}.',
  unclear: '{item}: whether it is done in time cannot be told; not recorded: {unrecorded}.',
};

/** One item on the recurrence engine. A tolerance makes nothing ready, as everywhere. Nothing entered is cannot-tell: it may have been done. */
export function itemDraft(facts: Facts, item: RecurringItem, source: SourceRef, effects: readonly Effect[]): Draft {
  const entries = accomplished(facts, ['own-item'], item.id, { by: tasks.maintenance });
  const parts = intervalParts(item.parts);
  const path = `status.recurring.${item.id}`;
  const from = item.document === null ? source : maker(item.document.title, item.name);
  const none = unknown('done-recorded', ['status.records'], { source: from });
  const found =
    parts === null
      ? null
      : recurring(
          facts,
          entries,
          { parts, combine: item.combine, countFrom: item.countFrom, toleranceFor: item.toleranceFor },
          { what: item.name, label: 'within-interval', source: from, none },
        );
  const clause = found?.clause ?? unknown('meter-of-interval-recorded', [`${path}.parts`], { source: from });
  return {
    subject: item.id,
    clause,
    messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'current' },
    data: {
      item: item.name,
      done: found?.governing?.done.date ?? 'never',
      unrecorded: missingOrReading(clause) ?? 'nothing',
    },
    effects,
    due: found?.due ?? [],
    remedies: [recordIt('own-item', item.id), ...findOut(clause, 'recurring.set', item.id)],
  };
}

/** The owner's or the shop's own. */
export const ownPractice = practice('items that the owner or the shop set for themselves');
