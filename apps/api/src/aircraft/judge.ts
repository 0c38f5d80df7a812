import { gzipSync } from 'node:zlib';
import {
  assess,
  databaseCycle,
  dueItemsOf,
  findingsOf,
  horizon,
  inShort,
  installedNames,
  messageOf,
} from '@tallywing/rules';
import type { Assessment, Catalogue, Dossier, Finding, Names, Outcome, Ready, Window } from '@tallywing/rules';
import { canonical, textHash } from '../common/canonical.js';
import { instantOf } from '../common/clock.js';
import { stampOf } from './stamp.js';
import type { Profile, Stamp } from './stamp.js';
import { named, subjectName, wordsIn } from './words.js';

/** How far ahead verdicts are stored, in months; a worker rolls them forward long before they end. */
const MONTHS_AHEAD = 18;

export type Row = Readonly<Record<string, string | number | boolean | null | readonly string[] | object>>;

/** Everything that follows from one dossier at one moment, in the form of the read tables. */
export interface Judgement {
  readonly stamp: Stamp;
  readonly windowsTo: string;
  readonly windows: readonly Row[];
  readonly findings: readonly Row[];
  readonly dueItems: readonly Row[];
  readonly databases: readonly Row[];
  readonly shown: { readonly hash: string; readonly body: Buffer };
  /** Ready by profile now, for "what did this change". */
  readonly ready: Readonly<Record<string, string>>;
  /** Keys of the findings open now. */
  readonly open: readonly string[];
  /** Effect, opening and closing of each finding, kept with the event for the trend over time. */
  readonly spans: readonly (readonly [string, string, string | null])[];
}

/**
 * Judges one aircraft for every profile of the house. Pure but for compression.
 * The horizon starts with the day and ends with a month, so that judging twice in a day gives the same rows.
 */
export function judge(dossier: Dossier, catalogue: Catalogue, profiles: readonly Profile[], now: Date): Judgement {
  const from = `${now.toISOString().slice(0, 10)}T00:00Z`;
  const windowsTo = instantOf(new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + MONTHS_AHEAD, 1)));
  const instant = instantOf(now);
  const found = findingsOf(
    dossier,
    catalogue,
    from,
    windowsTo,
    profiles.length === 0 ? undefined : profiles.map((profile) => profile.conditions),
  );
  const openNow = found.filter(
    (each) => each.opensAt <= instant && (each.closesAt === null || each.closesAt > instant) && each.above < 0,
  );
  const byProfile = profiles.map((profile) => ({
    profile,
    windows: horizon(dossier, catalogue, from, windowsTo, profile.conditions).windows,
  }));
  const names = installedNames(dossier.configuration);
  return {
    stamp: stampOf(profiles, catalogue.policies ?? []),
    windowsTo,
    windows: byProfile.flatMap(({ profile, windows }) => windows.map((each) => windowRow(profile.id, each, windows))),
    findings: found.map((each) => findingRow(each, subjectName(dossier, each.subject), names)),
    dueItems: dueItemsOf(dossier, catalogue).map((each) => ({
      rule_id: each.ruleId,
      subject: each.subject,
      subject_name: subjectName(dossier, each.subject),
      topic: each.topic,
      what: each.what,
      effect: each.effect,
      due_on: each.lastGoodDay,
      due_at: each.lapses,
      meter: each.meter,
      at_centihours: each.at,
      hours_left: each.hoursLeft,
      projected_at: each.projected,
      expected_at: each.expected,
      combine: each.combine,
      reading_ends_at: each.readingEnds,
    })),
    databases: dossier.status.loads.map((load) => ({
      unit_id: load.unitId,
      unit_name: subjectName(dossier, load.unitId),
      database: load.database,
      slot: load.slot,
      cycle: load.cycle,
      ...loadSpan(load),
    })),
    shown: shownAt(dossier, catalogue, byProfile, openNow, instant),
    ready: Object.fromEntries(
      byProfile.map(({ profile, windows }) => [profile.id, windowAt(windows, instant)?.ready ?? 'cannot-tell']),
    ),
    open: [...new Set(openNow.map((each) => each.key))].sort(),
    spans: found.filter((each) => each.above < 0).map((each) => [each.effect, each.opensAt, each.closesAt] as const),
  };
}

/** What the provider printed wins; else, for navigation data, the published cycle of that number. */
function loadSpan(load: Dossier['status']['loads'][number]): {
  readonly effective_at: string | null;
  readonly expires_at: string | null;
} {
  const cycle = load.database === 'navigation' && load.cycle !== null ? cycleNamed(load.cycle) : null;
  return {
    effective_at: load.effective ?? cycle?.effective ?? null,
    expires_at: load.expires ?? cycle?.expires ?? null,
  };
}

/** A cycle is in force from 0901Z of its effective date to 0901Z of the next one's. */
export function cycleNamed(id: string): { readonly effective: string; readonly expires: string } | null {
  const year = 2000 + Number(id.slice(0, 2));
  if (!/^\d{4}$/.test(id) || year > 2059) return null; // Beyond the published pattern.
  for (let date = `${year}-01-01`; date.startsWith(String(year));) {
    const cycle = databaseCycle(date);
    if (cycle.id === id) return { effective: `${cycle.effective}T09:01Z`, expires: `${cycle.next}T09:01Z` };
    date = cycle.next;
  }
  return null;
}

/** What was shown of one aircraft at one moment, as it is kept. */
export interface Shown {
  readonly of: Assessment['of'];
  readonly results: Assessment['results'];
  readonly verdicts: readonly { readonly profile: Profile; readonly verdict: Window | null }[];
  /** In the words of that day. Kept without them by early versions. */
  readonly findings: readonly (Finding & { readonly text?: string; readonly subjectName?: string })[];
  /** Not kept by early versions. */
  readonly capabilities?: Readonly<Record<string, Outcome>>;
  readonly operations?: Readonly<Record<string, Ready>>;
}

/**
 * What people are shown: the verdict of each profile, the findings in words, and every result with its clauses. Clauses do not
 * depend on the flight, so the results of one profile open the reasons of all.
 */
function shownAt(
  dossier: Dossier,
  catalogue: Catalogue,
  byProfile: readonly { readonly profile: Profile; readonly windows: readonly Window[] }[],
  open: readonly Finding[],
  instant: string,
): Judgement['shown'] {
  const moment = { instant, to: instant, hoursAhead: 0 };
  const words = wordsIn(dossier);
  const { of, results, operations } = assess(dossier, catalogue, moment, byProfile[0]?.profile.conditions);
  const shown: Shown = {
    of,
    results,
    verdicts: byProfile.map(({ profile, windows }) => ({ profile, verdict: windowAt(windows, instant) ?? null })),
    findings: open.map((each) => ({
      ...each,
      text: messageOf(each, words),
      subjectName: subjectName(dossier, each.subject),
    })),
    capabilities: inShort(dossier, catalogue, instant, []).capabilities,
    operations: operationsIn(operations),
  };
  const text = canonical(shown);
  return { hash: textHash(text), body: gzipSync(text, { level: 3 }) };
}

/** The fixed operations, without the flight that was asked about. */
export function operationsIn(operations: Assessment['operations']): Readonly<Record<string, Ready>> {
  return Object.fromEntries(
    Object.entries(operations).flatMap(([name, { ready }]) => (name === 'flight' ? [] : [[name, ready]])),
  );
}

function windowAt(windows: readonly Window[], instant: string): Window | undefined {
  return windows.find((each) => each.above < 0 && each.from <= instant && instant < each.to);
}

function windowRow(profileId: string, window: Window, all: readonly Window[]): Row {
  const laterTime = all.filter(
    (each) => each.from >= window.to && hoursMeet(each, window) && each.ready !== window.ready,
  );
  const moreHours = all.filter(
    (each) =>
      window.upTo !== null && each.above >= window.upTo && timesMeet(each, window) && each.ready !== window.ready,
  );
  return {
    profile_id: profileId,
    from_at: window.from,
    to_at: window.to,
    above: window.above,
    up_to: window.upTo,
    ready: window.ready,
    standing: window.standing,
    by_means: window.by,
    because: window.because,
    top_ft: window.topFt ?? null,
    weakest: window.weakestSource,
    changes_at: least(laterTime.map((each) => each.from)),
    changes_after: least(moreHours.map((each) => each.above)),
  };
}

const hoursMeet = (a: Window, b: Window): boolean =>
  (b.upTo === null || a.above < b.upTo) && (a.upTo === null || b.above < a.upTo);
const timesMeet = (a: Window, b: Window): boolean => a.from < b.to && b.from < a.to;

function least<T extends string | number>(values: readonly T[]): T | null {
  return values.reduce<T | null>((lowest, each) => (lowest === null || each < lowest ? each : lowest), null);
}

function findingRow(finding: Finding, name: string, names: Names): Row {
  return {
    rule_id: finding.ruleId,
    subject: finding.subject,
    subject_name: name,
    opens_at: finding.opensAt,
    closes_at: finding.closesAt,
    above: finding.above,
    up_to: finding.upTo,
    outcome: finding.outcome,
    message_id: finding.messageId,
    data: named(finding.data, names),
    effect: finding.effect,
    capabilities: finding.capabilities,
    topic: finding.topic,
    remedies: finding.remedies,
  };
}
