import { airac, airacEffectiveMinute } from '../facts/airac.js';
import type { SourceRef } from '../facts/source.js';
import { addDays } from '../time/calendar.js';
import { databaseCycle, databaseCycleAt } from '../time/cycles.js';
import type { Instant } from '../time/instant.js';
import { instantOf, minutesOf } from '../time/instant.js';
import type { DatabaseLoad } from '../dossier/status.js';
import { databaseSlot } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { allOf, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { maker } from './cite.js';

/** When a load may be used: half open. Null: neither printed nor computed. */
export interface LoadRegion {
  readonly from: Instant | null;
  readonly before: Instant | null;
  /** What the provider printed, or the cycle from which the end was computed. */
  readonly source: SourceRef;
}

const computed: SourceRef = {
  ...airac.source,
  paragraph: 'end of the cycle, taken to be 0901 UTC in databases as in airspace rules',
  status: airacEffectiveMinute.appliesToDatabases,
};

/** The provider's printed times win over those computed from the cycle. */
export function regionOf(load: DatabaseLoad): LoadRegion {
  const cycle = load.cycle === null ? null : instantsOfCycle(load.cycle);
  return {
    from: load.effective ?? cycle?.from ?? null,
    before: load.expires ?? cycle?.before ?? null,
    source: load.expires === null ? computed : maker('label of the database', `cycle ${load.cycle ?? 'not recorded'}`),
  };
}

/** Navigation data loaded in a unit: this cycle first. */
export function navigationLoads(facts: Facts, unitId: string): readonly DatabaseLoad[] {
  const loads = facts.dossier.status.loads.filter((each) => each.unitId === unitId && each.database === 'navigation');
  return databaseSlot.options.flatMap((slot) => loads.filter((each) => each.slot === slot));
}

/** Takes over the next cycle by itself. Null: not catalogued. */
export function holdsNextCycle({ type }: UnitFacts): boolean | null {
  return type === null ? null : type.databases.some(({ kind, holdsNext }) => kind === 'navigation' && holdsNext);
}

/** In force from its effective instant until it expires; outside that not-met, where an end is unknown cannot-tell. */
export function inForce(load: DatabaseLoad): Clause {
  const { from, before, source } = regionOf(load);
  const path = `status.loads.${load.unitId}.navigation.${load.slot}`;
  const extra = { source, evidence: [path] };
  if (before === null) return unknown('expiry-recorded', [`${path}.cycle`, `${path}.expires`], extra);
  if (from === null)
    return allOf(
      'in-force',
      [
        within('before-expiry', { before }, extra),
        unknown('effective-recorded', [`${path}.cycle`, `${path}.effective`], extra),
      ],
      'cannot-tell',
    );
  return within('in-force', { from, before }, extra);
}

/** First and one-past-last instant of a cycle named YYNN; null: there is no such cycle, or it lies outside 1990 to 2060. */
export function instantsOfCycle(id: string): { readonly from: Instant; readonly before: Instant } | null {
  const short = Number(id.slice(0, 2));
  const year = short >= 90 ? 1900 + short : 2000 + short;
  if (year > 2060) return null;
  const opening = databaseCycle(`${year}-01-01`);
  const first = opening.effective === `${year}-01-01` ? opening.effective : opening.next;
  const effective = addDays(first, (Number(id.slice(2)) - 1) * airac.lengthDays);
  if (effective < '1990-01-01' || effective > '2060-12-31' || databaseCycle(effective).id !== id) return null;
  return { from: takesOver(effective), before: takesOver(addDays(effective, airac.lengthDays)) };
}

/** When the cycle in force at an instant ends; null: outside 1990 to 2060. */
export function nextCycleAfter(instant: Instant): Instant | null {
  return instant < '1990-01-02' || instant > '2060-12-01' ? null : takesOver(databaseCycleAt(instant).next);
}

function takesOver(date: string): Instant {
  return instantOf(minutesOf(`${date}T00:00Z`) + airacEffectiveMinute.value);
}
