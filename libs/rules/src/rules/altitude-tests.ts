import type { RecordKind } from '../dossier/status.js';
import { calendarMonths } from '../facts/intervals.js';
import type { Sourced } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { lastGoodDay } from '../time/calendar.js';
import type { CivilDate } from '../time/instant.js';
import { allOf, anyOf, fact, met, notMet, unknown, within } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';
import type { Counted } from './accomplished.js';
import { accomplished } from './accomplished.js';
import { cfr } from './cite.js';
import { dueOn, endOfDay } from './periodic.js';
import { calendarMonthsFromDone, recurring } from './recurring.js';
import { tsoNumber } from './tso.js';
import type { Task } from './who-may.js';
import { tasks } from './who-may.js';

/** Whether one thing was tested in time, and through which day. */
export interface Tested {
  readonly clause: Clause;
  readonly lastGood: CivilDate | null;
  readonly due: readonly Due[];
}

const byManufacture = cfr('91.411(c)');
/** TSO-C10. */
const altimeters = 'C10';
/** TSO-C88: automatic altitude reporting equipment. */
const reporters = 'C88';

export function staticSystemTested(facts: Facts, id: string): Tested {
  return periodic(facts, 'static-system-test', id, tasks.staticTest, calendarMonths.staticAndAltimeter);
}

export function transponderTested(facts: Facts, unitId: string): Tested {
  return periodic(facts, 'transponder-test', unitId, tasks.transponderTest, calendarMonths.transponder);
}

export function altimeterTested(facts: Facts, unit: UnitFacts): Tested {
  return orManufacture(facts, 'altimeter-test', unit, altimeters);
}

export function reporterTested(facts: Facts, unit: UnitFacts): Tested {
  return orManufacture(facts, 'altitude-reporting-test', unit, reporters);
}

/** Entries that count for an altimeter or reporter, newest first. */
export function altitudeEntries(
  facts: Facts,
  kind: 'altimeter-test' | 'altitude-reporting-test',
  unitId: string,
): readonly Counted[] {
  return accomplished(facts, [kind], unitId, { by: tasks.altimeterTest });
}

function periodic(
  facts: Facts,
  kind: 'static-system-test' | 'altimeter-test' | 'altitude-reporting-test' | 'transponder-test',
  subject: string,
  by: Task,
  interval: Sourced<number>,
): Tested {
  return recurring(facts, accomplished(facts, [kind], subject, { by }), calendarMonthsFromDone(interval.value), {
    what: kind,
    label: 'within-calendar-months',
    source: interval.source,
    none: unknown(`${kind}-recorded`, ['status.records'], { source: interval.source }),
  });
}

/** Equipment made under a TSO counts as tested on the day it was made; the clock starts there, not at installation (91.411(c)). */
function orManufacture(
  facts: Facts,
  kind: 'altimeter-test' | 'altitude-reporting-test',
  unit: UnitFacts,
  number: string,
): Tested {
  const interval = calendarMonths.staticAndAltimeter;
  const test = periodic(facts, kind, unit.id, tasks.altimeterTest, interval);
  const authorised = authorisedUnder(unit, number);
  const made = unit.unit.manufactured;
  const since = sinceMade(facts, kind, unit);
  const clause = anyOf(
    'tested-or-new',
    [
      test.clause,
      allOf(
        'new-equipment-under-tso',
        [
          fact(authorised, 'made-under-tso', `catalogue.${unit.id}.authorisations`, { source: byManufacture }),
          manufacture(facts, kind, unit, interval.value),
          since,
        ],
        'cannot-tell',
      ),
    ],
    'cannot-tell',
  );
  const counts = made !== null && authorised === true && since.inside !== 'not-met';
  const goodByManufacture = counts ? lastGoodDay(made, interval.value) : null;
  if (goodByManufacture === null || (test.lastGood !== null && test.lastGood >= goodByManufacture))
    return { ...test, clause };
  return { clause, lastGood: goodByManufacture, due: dueOn(facts, kind, goodByManufacture) };
}

/** What was new and then failed a test is as tested as that test: no test can be older than the unit. */
function sinceMade(facts: Facts, kind: RecordKind, unit: UnitFacts): Leaf {
  const label = 'no-test-failed-since';
  const seen = facts.records(kind, unit.id).filter((each) => each.evidence === 'entry-seen');
  const failed = seen.find((each) => each.outcome === 'failed' || each.outcome === 'disapproved');
  if (failed) return notMet(label, { source: byManufacture, evidence: [failed.id] });
  const open = seen.find((each) => each.outcome === null);
  return open
    ? unknown(label, [`status.records.${open.id}.outcome`], { source: byManufacture, evidence: [open.id] })
    : met(label, { source: byManufacture });
}

/** A unit whose manufacture date nobody recorded was made no later than it was first fitted or tested: after that day's interval it is new no more. */
function manufacture(facts: Facts, kind: RecordKind, unit: UnitFacts, months: number): Clause {
  const extra = { source: byManufacture, limit: { amount: months, unit: 'calendar months' } };
  const { manufactured, fitted } = unit.unit;
  if (manufactured !== null)
    return within('made-within-calendar-months', { before: endOfDay(facts, lastGoodDay(manufactured, months)) }, extra);
  const missing = [`configuration.units.${unit.id}.manufactured`];
  const seen = [
    ...facts.records(kind, unit.id).map((each) => each.done.date),
    ...(fitted ? [fitted.date] : []),
  ].sort()[0];
  if (seen === undefined) return unknown('made-within-calendar-months', missing, extra);
  const latest = { before: endOfDay(facts, lastGoodDay(seen, months)) };
  return within('made-within-calendar-months', latest, { ...extra, missing }, 'cannot-tell', 'not-met');
}

/** Null: not catalogued, or its manual names no authorisation at all. */
function authorisedUnder({ type }: UnitFacts, number: string): boolean | null {
  if (type === null || type.authorisations.length === 0) return null;
  return type.authorisations.some(({ tso }) => tsoNumber(tso) === number);
}
