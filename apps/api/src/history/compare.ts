import { assess, inShort, messageOf, rulesVersion } from '@tallywing/rules';
import type { Catalogue, Dossier, OpenResult, Outcome, Ready } from '@tallywing/rules';
import { canonical } from '../common/canonical.js';
import { operationsIn } from '../aircraft/judge.js';
import type { Shown } from '../aircraft/judge.js';
import type { Profile } from '../aircraft/stamp.js';
import { subjectName, wordsIn } from '../aircraft/words.js';

export interface OpenFinding {
  readonly key: string;
  readonly ruleId: string;
  readonly subject: string;
  readonly subjectName: string;
  readonly outcome: 'not-met' | 'cannot-tell';
  readonly text: string;
  /** What is said, apart from its wording. */
  readonly said: string;
}

/** What today's rules say of one record at one moment. */
export function answersNow(dossier: Dossier, catalogue: Catalogue, instant: string, profiles: readonly Profile[]) {
  const { flights, open } = inShort(
    dossier,
    catalogue,
    instant,
    profiles.map(({ conditions }) => conditions),
  );
  return {
    rules: rulesVersion,
    flights: profiles.map(({ name }, at) => ({ flight: name, ready: flights[at] ?? ('cannot-tell' as const) })),
    open: open.map((each) => inWords(each, dossier)),
  };
}

/**
 * What was shown, beside what today's rules say of the same record at the same minute, for the flights asked about then: only
 * the rules and the zone data can make a difference.
 */
export function compareWithToday(shown: Shown, dossier: Dossier, catalogue: Catalogue) {
  const { instant } = shown.of.moment;
  const profiles = shown.verdicts.map(({ profile }) => profile);
  const now = inShort(
    dossier,
    catalogue,
    instant,
    profiles.map(({ conditions }) => conditions),
  );
  const assessed = assess(dossier, catalogue, shown.of.moment, profiles[0]?.conditions);
  const flights = shown.verdicts.map(({ profile, verdict }) => ({
    flight: profile.name,
    ready: verdict?.ready ?? ('cannot-tell' as const),
  }));
  const was = findingsShown(shown, dossier);
  const is = now.open.map((each) => inWords(each, dossier));
  const before = new Map(was.map((each) => [each.key, each]));
  const after = new Map(is.map((each) => [each.key, each]));
  return {
    at: instant,
    entry: shown.of.revision,
    rules: shown.of.rules,
    zones: shown.of.zones,
    flights,
    open: was,
    rulesNow: assessed.of.rules,
    zonesNow: assessed.of.zones,
    flightsDiffer: flights.flatMap(({ flight, ready }, at) => {
      const today = now.flights[at] ?? 'cannot-tell';
      return today === ready ? [] : [{ flight, was: ready, is: today }];
    }),
    operationsDiffer:
      shown.operations === undefined
        ? null
        : differing<Ready>(shown.operations, operationsIn(assessed.operations), 'cannot-tell').map(
            ({ name, was, is }) => ({ flight: name, was, is }),
          ),
    capabilitiesDiffer:
      shown.capabilities === undefined
        ? null
        : differing<Outcome>(shown.capabilities, now.capabilities, 'cannot-tell').map(({ name, was, is }) => ({
            capability: name,
            was,
            is,
          })),
    opened: is.filter(({ key }) => !before.has(key)),
    closed: was.filter(({ key }) => !after.has(key)),
    changed: is.flatMap((each) => {
      const earlier = before.get(each.key);
      return earlier === undefined || (earlier.outcome === each.outcome && earlier.said === each.said)
        ? []
        : [{ was: earlier, is: each }];
    }),
  };
}

/** The findings that were shown, each once; in the words of that day where they were kept. */
export function findingsShown(shown: Shown, dossier: Dossier): OpenFinding[] {
  const byKey = new Map<string, OpenFinding>();
  for (const each of shown.findings) {
    const known = byKey.get(each.key);
    if (known !== undefined && (known.outcome === 'not-met' || each.outcome === 'cannot-tell')) continue;
    const words = inWords(each, dossier);
    byKey.set(each.key, {
      ...words,
      text: each.text ?? words.text,
      subjectName: each.subjectName ?? words.subjectName,
    });
  }
  return [...byKey.values()];
}

function inWords(
  each: Pick<OpenResult, 'key' | 'ruleId' | 'subject' | 'messageId' | 'data' | 'outcome'>,
  dossier: Dossier,
) {
  const { key, ruleId, subject, outcome } = each;
  return {
    key,
    ruleId,
    subject,
    subjectName: subjectName(dossier, subject),
    outcome: outcome as OpenFinding['outcome'],
    text: messageOf(each, wordsIn(dossier)),
    said: canonical([each.messageId, each.data]),
  };
}

/** Names in either that do not answer the same; one that is in neither list cannot be told. */
function differing<T>(was: Readonly<Record<string, T>>, is: Readonly<Record<string, T>>, missing: T) {
  return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((name) => {
    const [old, now] = [was[name] ?? missing, is[name] ?? missing];
    return old === now ? [] : [{ name, was: old, is: now }];
  });
}
