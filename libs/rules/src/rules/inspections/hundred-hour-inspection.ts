import { nextHundredHour } from '../../calculations/hundred-hour.js';
import type { Recurrence } from '../../calculations/recurrence.js';
import { hundredHour } from '../../facts/intervals.js';
import type { RecordHead, RecordKind } from '../../dossier/status.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import { toCentihours, toDecimalHours } from '../../time/hours.js';
import { fact, flight, implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import type { Purpose } from '../../verdict/conditions.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { cfr, reading } from '../cite.js';
import { findOut as missing } from '../gaps.js';
import { boundWithoutProgram } from '../inspection-program.js';
import type { Recurring } from '../recurring.js';
import { recurring } from '../recurring.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import type { Task } from '../who-may.js';
import { tasks } from '../who-may.js';

/** One of the three texts that ask for 100 hours, and the flights that it binds. */
interface Regime {
  readonly source: SourceRef;
  readonly purposes: readonly Purpose[];
  readonly kinds: readonly RecordKind[];
  readonly by: Task;
}

const standard: Regime = {
  source: hundredHour.everyHours.source,
  purposes: ['training-provided', 'carriage-for-hire'],
  // The first 100 hours after a progressive program is left run from its last complete inspection (91.409(d)).
  kinds: [
    'annual-inspection',
    'hundred-hour-inspection',
    'airworthiness-certificate-inspection',
    'progressive-complete',
  ],
  by: tasks.hundredHour,
};
const lightSport: Regime = {
  source: cfr('91.327(c)'),
  purposes: ['training-provided', 'tow-for-hire'],
  kinds: ['condition-inspection', 'hundred-hour-inspection', 'airworthiness-certificate-inspection'],
  by: tasks.lightSportInspection,
};
const experimental: Regime = { ...lightSport, source: cfr('91.319(g)') };
/** Certificate not recorded: only what satisfies every text counts. */
const unrecorded: Regime = {
  source: standard.source,
  purposes: ['training-provided', 'carriage-for-hire', 'tow-for-hire'],
  kinds: ['hundred-hour-inspection', 'airworthiness-certificate-inspection'],
  by: tasks.hundredHour,
};
const lateWithoutAllowance = reading('14 CFR', '91.409(b), late without the allowance');

/** Ten hours may be overflown on the way to the inspection (91.409(b)); they are never part of ready for hire, and count into the next. */
export const hundredHourInspection = defineRule(
  {
    id: 'hundred-hour-inspection',
    topic: 'inspections',
    asks: 'Within the preceding 100 hours of time in service an annual, 100-hour or airworthiness certificate inspection, with approval for return to service.',
    binds:
      'Flights with persons for hire and instruction in an aircraft that the instructor provides; light-sport and experimental aircraft for towing and such instruction, without an allowance. Not rental, and not aircraft under a program that 91.409 lets them follow.',
    sources: [
      standard.source,
      hundredHour.enRouteHours.source,
      tasks.progressive.source,
      lightSport.source,
      experimental.source,
      cfr('1.1'),
    ],
    messages: {
      current: '100-hour inspection of {done}: the next is due at {next} h.',
      lapsed: 'No inspection that counts within the preceding 100 hours of time in service.',
      unclear: 'Whether the aircraft is within its 100 hours cannot be told from the record.',
      'not-asked': 'No 100-hour inspection is asked of this flight.',
    },
    establishes: [],
  },
  (facts) => {
    const regime = regimeOf(facts);
    const found = withinHundredHours(facts, regime);
    const bindsAircraft = binds(facts, regime);
    const bound = flight('for-hire-as-the-rule-says', { purpose: regime.purposes }, { source: regime.source });
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(bindsAircraft, implies(bound, found.clause)),
      messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
      data: {
        done: found.governing?.done.date ?? null,
        next: found.at === null ? null : toDecimalHours(found.at),
        nextByLaterReading: found.governing === null ? null : countedFromDone(facts, found.governing),
      },
      effects: [{ stops: 'capability', capability: 'hire' }],
      due: bindsAircraft.inside === 'not-met' ? [] : found.due,
      remedies: [
        recordIt('hundred-hour-inspection'),
        findOut('meter.define', 'aircraft', 'meters.timeInService'),
        ...missing(bindsAircraft, 'aircraft.amend', 'aircraft'),
      ],
    };
    return [draft];
  },
);

/**
 * Counted from when it was done, or from when it was due where it was done late: so the rule says of the allowance, and so the
 * stricter reading goes for an overrun without it, on which the text is silent and owners and lawyers differ.
 */
function withinHundredHours(facts: Facts, regime: Regime): Pick<Recurring, 'clause' | 'governing' | 'at' | 'due'> {
  const { by, kinds } = regime;
  const entries = accomplished(facts, kinds, 'aircraft', { by, outcomes: ['approved'], also: byKindOfInspection });
  const meter = facts.dossier.meters.timeInService;
  const none = unknown('hundred-hour-recorded', ['status.records'], { source: regime.source });
  if (meter === null) {
    const clause = unknown('time-in-service-meter-stated', ['meters.timeInService'], { source: cfr('1.1') });
    return { clause, governing: null, at: null, due: [] };
  }
  const source = (record: RecordHead) => (allowed(record, meter, regime) ? regime.source : lateWithoutAllowance);
  return recurring(facts, entries, every(meter), {
    what: 'hundred-hour-inspection',
    label: 'within-hundred-hours',
    source,
    none,
  });
}

/** An annual or a complete progressive inspection restarts the hours only as what it is: signed by whoever may sign that. */
const strictly: Partial<Record<RecordKind, Task>> = {
  'annual-inspection': tasks.annualInspection,
  'progressive-complete': tasks.progressive,
};

function byKindOfInspection({ id, kind, agency }: RecordHead): readonly Leaf[] {
  const task = strictly[kind];
  if (task === undefined) return [];
  const may = agency === null ? null : task.may(agency);
  return [fact(may, 'signer-allowed-for-kind', `status.records.${id}.agency`, { source: task.source, evidence: [id] })];
}

function every(meter: string): Recurrence {
  const count = toCentihours(hundredHour.everyHours.value);
  const tolerance = toCentihours(hundredHour.enRouteHours.value);
  const part = { kind: 'hours', meter, count, tolerance } as const;
  return { parts: [part], combine: 'first', countFrom: 'earlier', toleranceFor: 'en-route' };
}

/** Done in time, or late as 91.409(b) allows; the other two texts allow nothing. */
function allowed(record: RecordHead, meter: string, regime: Regime): boolean {
  const done = record.meters.find((each) => each.meter === meter)?.value;
  if (done === undefined || record.dueAt === null) return true;
  const enRoute = regime === standard && record.enRoute === true;
  return nextHundredHour({ due: toDecimalHours(record.dueAt), done: toDecimalHours(done), enRoute }).allowed;
}

/** Shown beside the acted-on figure where an inspection was done late: what counting from when it was done would give. */
function countedFromDone(facts: Facts, record: RecordHead): number | null {
  const done = record.meters.find((each) => each.meter === facts.dossier.meters.timeInService)?.value;
  if (done === undefined || record.dueAt === null || done <= record.dueAt) return null;
  return toDecimalHours(done) + hundredHour.everyHours.value;
}

function regimeOf(facts: Facts): Regime {
  const { certificate } = facts.dossier.configuration.aircraft;
  if (certificate === null) return unrecorded;
  if (certificate === 'light-sport') return lightSport;
  return certificate === 'experimental' ? experimental : standard;
}

function binds(facts: Facts, regime: Regime): Leaf {
  const { certificate } = facts.dossier.configuration.aircraft;
  const extra = { source: cfr('91.409(c)') };
  if (certificate === null) return unknown('bound-by-100-hours', ['configuration.aircraft.certificate'], extra);
  if (regime !== standard) return met('bound-by-100-hours', { source: regime.source });
  return certificate === 'provisional'
    ? notMet('bound-by-100-hours', extra)
    : boundWithoutProgram(facts, 'bound-by-100-hours');
}
