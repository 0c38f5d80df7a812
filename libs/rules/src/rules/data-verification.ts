import type { RecordHead } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { startOfDay } from '../time/zones.js';
import { allOf, fact, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { accomplished } from './accomplished.js';
import { aim } from './cite.js';
import type { GnssCapability } from './effects.js';
import { gnssCapabilities } from './effects.js';
import { nextCycleAfter } from './navigation-data.js';
import { endOfDay } from './periodic.js';
import { tasks } from './who-may.js';

export const approachNote = aim('1-1-17, approval table, note 3');
export const verified = aim('1-2-3, note 4');

export type DataUse = 'en-route' | 'approach';

/** What is lost where the data do not serve a use. */
export function usedFor(use: DataUse): readonly GnssCapability[] {
  return gnssCapabilities.filter((capability) => (capability === 'nav-gnss') === (use === 'en-route'));
}

/** Entries of pilots who checked the data, each for the days from its own to the one it names. */
export function verifications(facts: Facts, each: UnitFacts, use: DataUse): readonly Clause[] {
  const by = tasks.dataVerification;
  const procedure = use === 'approach' ? { also: procedureNamed } : {};
  return accomplished(facts, ['data-verification'], each.id, { by, ...procedure }).map(({ record, clause }) =>
    allOf(
      'verified-and-of-the-day',
      [clause, within('day-of-verification', daysOf(facts, record), { source: verified, evidence: [record.id] })],
      'cannot-tell',
    ),
  );
}

/** It is one procedure that was not amended since: the entry names it, or the chart it was compared with. */
function procedureNamed({ id, place, document, note }: RecordHead): readonly Clause[] {
  const named = place !== null || document !== null || note !== null;
  const extra = { source: approachNote, evidence: [id] };
  return [fact(named ? true : null, 'procedure-named', `status.records.${id}.document`, extra)];
}

/** Never beyond the cycle in which it was made: the next one may amend the procedure again. */
function daysOf(facts: Facts, record: RecordHead) {
  const from = startOfDay(record.done.date, facts.zone);
  const named = endOfDay(facts, record.expires ?? record.done.date);
  const change = nextCycleAfter(from);
  return { from, before: change !== null && change < named ? change : named };
}
