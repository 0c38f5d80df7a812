import type { Dossier } from '../dossier/dossier.js';
import type { Performed } from '../dossier/common.js';
import type { Obligation, RecordHead, RecordKind, Touched } from '../dossier/status.js';
import { put } from './lists.js';
import { orderOf } from './records.js';

/**
 * What each kind of work calls for. Frozen with version 1 of the changes that use it.
 * static leak: 91.411(a)(2); correspondence: 91.411(a)(3), 91.413(b); flight check: 91.407(b);
 * controls: common practice after work behind the panel; compass: AC 43.13-1B 12-37; GNSS checks: AC 20-138 (from memory).
 */
const calls: Readonly<
  Record<
    Exclude<Touched, 'nothing'>,
    readonly { readonly what: RecordKind; readonly on: 'aircraft' | 'unit' | 'static' }[]
  >
> = {
  'static-system': [{ what: 'static-leak-test', on: 'static' }],
  'altitude-chain': [{ what: 'altitude-correspondence-test', on: 'aircraft' }],
  transponder: [{ what: 'altitude-correspondence-test', on: 'aircraft' }],
  gnss: [
    { what: 'gnss-function-check', on: 'unit' },
    { what: 'vhf-interference-check', on: 'unit' },
  ],
  'ads-b': [{ what: 'ads-b-report', on: 'aircraft' }],
  electrical: [{ what: 'compass-swing', on: 'aircraft' }],
  ferrous: [{ what: 'compass-swing', on: 'aircraft' }],
  'behind-panel': [{ what: 'controls-check', on: 'aircraft' }],
  registration: [{ what: 'ads-b-report', on: 'aircraft' }],
  'flight-characteristics': [{ what: 'pilot-flight-check', on: 'aircraft' }],
};

/**
 * Opens what the work calls for. The same test on the same subject is owed once, since the latest work, in whatever order the work
 * was written down. Of two pieces of work on one day without both times nobody knows the later: the time is then unknown.
 */
export function openObligations(
  dossier: Dossier,
  work: {
    readonly touched: readonly Touched[];
    readonly unitId: string | null;
    readonly performed: Performed;
    readonly kind: string;
    readonly release: boolean;
    /** Where nothing is said of what was touched, it may be anything until somebody says it. */
    readonly mustSay?: boolean;
  },
): readonly Obligation[] {
  let list: readonly Obligation[] = dossier.status.obligations;
  const open = (what: Obligation['what'], subject: string, touched: Touched | null) => {
    const owed = list.find((each) => each.id === `${what}:${subject}`);
    const since = later(owed?.since ?? null, work.performed);
    if (owed && since === owed.since) return;
    list = put(list, {
      id: `${what}:${subject}`,
      what,
      subject,
      since,
      becauseOf: work.kind,
      touched,
      closedBy: null,
    });
  };
  for (const touched of work.touched) {
    if (touched === 'nothing') continue;
    for (const call of calls[touched])
      for (const subject of subjectsOf(dossier, call.on, work.unitId)) open(call.what, subject, touched);
  }
  if (work.mustSay && work.touched.length === 0) open('what-was-touched', work.unitId ?? 'aircraft', null);
  if (work.release) open('release-entry', work.unitId ?? 'aircraft', null);
  return list;
}

/** Somebody says later what a piece of work touched: what it calls for is owed since that work. */
export function sayTouched(dossier: Dossier, owed: Obligation, touched: readonly Touched[]): readonly Obligation[] {
  const { status } = dossier;
  const rest = {
    ...dossier,
    status: { ...status, obligations: status.obligations.filter(({ id }) => id !== owed.id) },
  };
  const opened = openObligations(rest, {
    touched,
    unitId: owed.subject === 'aircraft' ? null : owed.subject,
    performed: owed.since,
    kind: owed.becauseOf,
    release: false,
  });
  return status.records.reduce(answerObligations, opened);
}

/** A unit that is taken out leaves what nobody said of work on it: it may have touched more than the unit. */
export function withoutUnit(list: readonly Obligation[], unitId: string): readonly Obligation[] {
  const of = (subject: string) =>
    list.find((each) => each.what === 'what-was-touched' && each.subject === subject) ?? null;
  const [own, general] = [of(unitId), of('aircraft')];
  const rest = list.filter((each) => each.subject !== unitId);
  if (own === null) return rest;
  const since = later(general?.since ?? null, own.since);
  return put(rest, { ...own, id: 'what-was-touched:aircraft', subject: 'aircraft', since });
}

/** The first argument itself where it is the later. */
function later(known: Performed | null, next: Performed): Performed {
  if (known === null) return next;
  const order = orderOf(known, next);
  if (order === 'later') return known;
  // Both without a time, or one: the day is known. Two with the same time are as good as one.
  return order === 'earlier' || known.at === next.at ? next : { date: next.date, at: null };
}

/** An entry of the right kind and subject, done on or after the day of the work, answers the obligation. Whether it counts is the rules' business. */
export function answerObligations(list: readonly Obligation[], record: RecordHead): readonly Obligation[] {
  return list.map((owed) =>
    owed.what === record.kind && record.subjects.includes(owed.subject) && record.done.date >= owed.since.date
      ? { ...owed, closedBy: record.id }
      : owed,
  );
}

function subjectsOf(dossier: Dossier, on: 'aircraft' | 'unit' | 'static', unitId: string | null): readonly string[] {
  if (on === 'unit') return [unitId ?? 'aircraft'];
  if (on === 'aircraft' || dossier.configuration.staticSystems.length === 0) return ['aircraft'];
  return dossier.configuration.staticSystems.map((each) => each.id);
}
