import type { RecordHead } from '../dossier/status.js';
import { eltBatteryUseHours } from '../facts/elt.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import type { CivilDate, Instant } from '../time/instant.js';
import { civilDateAt } from '../time/zones.js';
import { allOf, anyOf, met, notMet, unknown, within } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import { accomplished } from './accomplished.js';
import { cfr, practice } from './cite.js';
import { endOfDay } from './periodic.js';
import { batteryReplacement } from './who-may.js';

const noneEntered = practice('transmitting is entered when it happens');

/** Whether the battery of an emergency transmitter is good: 91.207(c). */
export interface Battery {
  readonly clause: Clause;
  readonly goodTo: CivilDate | null;
}

/**
 * The newest battery entry that was seen decides, and any reported after it; older batteries are gone.
 * An entry that failed (run down, used too long) leaves no good battery.
 */
export function batteryOf(facts: Facts, unit: UnitFacts): Battery {
  const source = cfr('91.207(c)');
  const by = batteryReplacement(facts.dossier.configuration.aircraft.certificate);
  const entries = accomplished(facts, ['elt-battery'], unit.id, { by });
  const seen = entries.findIndex(({ record }) => record.evidence === 'entry-seen');
  const clauses = entries.slice(0, seen < 0 ? entries.length : seen + 1).map(({ record, clause }) => {
    const evidence = [record.id];
    const expiry =
      record.expires === null
        ? unknown('battery-expiry-recorded', [`status.records.${record.id}.expires`], { source, evidence })
        : within(
            'before-battery-expiry',
            { before: endOfDay(facts, record.expires) },
            { source: cfr('91.207(c)(2)'), evidence },
          );
    return allOf('battery-good', [clause, expiry, usedSince(facts, unit, record)], 'cannot-tell');
  });
  return {
    clause: anyOf(
      'elt-battery',
      clauses.length > 0 ? clauses : [unknown('battery-recorded', ['status.records'], { source })],
      'cannot-tell',
    ),
    goodTo: entries[0]?.record.expires ?? null,
  };
}

/** Hours of transmitting on this battery, as its own entry, later ones and the counter read since show them. Exactly one hour is allowed. */
function usedSince(facts: Facts, unit: UnitFacts, battery: RecordHead): Leaf {
  const { definitions, readings } = facts.dossier.meters;
  const counters = definitions.filter((each) => each.kind === 'elt-transmitter').map((each) => each.id);
  const entered = facts.dossier.status.records
    .filter((each) => each.id === battery.id || (each.subjects.includes(unit.id) && each.done.date > battery.done.date))
    .flatMap((each) => each.meters)
    .filter((each) => counters.includes(each.meter))
    .map((each) => each.value);
  const read = counters.flatMap((meter) => {
    const reading = readings[meter];
    return reading ? [{ meter, value: reading.value, after: readAfter(facts, reading.asOf, battery) }] : [];
  });
  const doubtful = read.find((each) => each.after === null && each.value > eltBatteryUseHours.value * 100);
  if (doubtful) {
    const missing = [`status.records.${battery.id}.done.at`];
    return unknown('battery-use', missing, { source: eltBatteryUseHours.source, evidence: [battery.id] });
  }
  const shown = [...entered, ...read.filter((each) => each.after === true).map((each) => each.value)];
  if (shown.length === 0) return met('no-transmitting-entered', { source: noneEntered });
  const hours = Math.max(...shown) / 100;
  const extra = {
    source: eltBatteryUseHours.source,
    value: { amount: hours, unit: 'h' },
    limit: { amount: eltBatteryUseHours.value, unit: 'h' },
  };
  return hours <= eltBatteryUseHours.value ? met('battery-use', extra) : notMet('battery-use', extra);
}

/** Whether the counter was read on this battery. Null: on the day of its entry, and nobody recorded the time. */
function readAfter(facts: Facts, asOf: Instant, { done }: RecordHead): boolean | null {
  const day = civilDateAt(asOf, facts.zone);
  if (day !== done.date) return day > done.date;
  return done.at === null ? null : asOf > done.at;
}
