import { hoursUntil, latestReading, readingEnds } from '../assess/meters.js';
import { effectOf } from './findings.js';
import type { FindingEffect } from './findings.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Topic } from '../rules/rule.js';
import { rules } from '../rules/registry.js';
import type { Centihours } from '../time/hours.js';
import type { CivilDate, Instant } from '../time/instant.js';
import { instantOf, minutesOf } from '../time/instant.js';

/** Something that falls due by day, by hours, or both. */
export interface DueItem {
  readonly ruleId: string;
  readonly topic: Topic;
  readonly subject: string;
  readonly what: string;
  readonly effect: FindingEffect;
  readonly lastGoodDay: CivilDate | null;
  /** First instant at which it is no longer good; certain. */
  readonly lapses: Instant | null;
  readonly meter: string | null;
  readonly at: Centihours | null;
  /** Flight hours since the latest reading that are left; null: not by hours, or the meter was never read. */
  readonly hoursLeft: Centihours | null;
  /** When the hours run out at the recorded use; null: not by hours, or no use recorded. */
  readonly projected: Instant | null;
  /** The earlier (or, for `last`, the later) of both: what a calendar shows. */
  readonly expected: Instant | null;
  readonly combine: 'first' | 'last';
  /** From when the last reading of the meter is too old to carry it; null: not by hours, never read, or not with the others. */
  readonly readingEnds: Instant | null;
}

const topicOf = new Map(rules.map((rule) => [rule.meta.id, rule.meta.topic]));
const minutesPerMonth = 43_830; // 365.25 days / 12

export function dueItemsOf(dossier: Dossier, catalogue: Catalogue): readonly DueItem[] {
  const { zone } = dossier.configuration.aircraft.base;
  return systemOf(dossier, catalogue).statements.flatMap((statement) =>
    (statement.due ?? []).map((due): DueItem => {
      const hoursLeft = due.meter !== undefined && due.at !== undefined ? hoursUntil(dossier, due.meter, due.at) : null;
      const projected = projectedEnd(dossier, hoursLeft);
      const lapses = due.lapses ?? null;
      const both = [lapses, projected].filter((each): each is Instant => each !== null).sort();
      return {
        ruleId: statement.ruleId,
        topic: topicOf.get(statement.ruleId) ?? 'authority',
        subject: statement.subject,
        what: due.what,
        effect: effectOf(statement),
        lastGoodDay: due.lastGoodDay ?? null,
        lapses,
        meter: due.meter ?? null,
        at: due.at ?? null,
        hoursLeft,
        projected,
        expected: (due.combine === 'first' ? both[0] : both.at(-1)) ?? null,
        combine: due.combine,
        readingEnds: due.meter === undefined ? null : readingEnds(dossier, due.meter, catalogue.policies, zone),
      };
    }),
  );
}

function projectedEnd(dossier: Dossier, hoursLeft: Centihours | null): Instant | null {
  const { perMonth } = dossier.meters.utilisation;
  const read = latestReading(dossier);
  if (hoursLeft === null || perMonth === null || perMonth === 0 || read === null) return null;
  const minutes = minutesOf(read) + Math.max(0, Math.ceil((hoursLeft * minutesPerMonth) / perMonth));
  return minutes < 67_000_000 ? instantOf(minutes) : null;
}
