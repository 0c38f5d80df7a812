import type { RecordKind } from '../dossier/status.js';
import { eltTrainingNm } from '../facts/elt.js';
import { calendarMonths } from '../facts/intervals.js';
import type { Facts } from '../graph/facts.js';
import { lastGoodDay } from '../time/calendar.js';
import { allOf, fact, flight, met, notMet, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Errand, Purpose } from '../verdict/conditions.js';
import { cfr, reading } from './cite.js';
import { endOfDay } from './periodic.js';
import { noneFitted } from './unit-state.js';

/** The text of each exception, by the errand that it speaks of. Scheduled flights (f)(2) and heavy payloads (f)(11) are none of these aircraft. */
export const exceptions = {
  ferry: cfr('91.207(e)'),
  training: eltTrainingNm.source,
  'design-or-test': cfr('91.207(f)(4)'),
  'manufacture-or-delivery': cfr('91.207(f)(5)'),
  'aerial-application': cfr('91.207(f)(6)'),
  'research-and-development': cfr('91.207(f)(7)'),
  'compliance-or-exhibition': cfr('91.207(f)(8)'),
  onePerson: cfr('91.207(f)(9)'),
  /** The text says "new" and gives no measure. */
  newness: reading('14 CFR 91.207(f)(5)', 'an aircraft that had a periodic inspection is not new any more'),
} as const;

/** Nobody carries passengers for hire, rents out or teaches on such a flight. */
const noOrdinaryFlight: readonly Purpose[] = ['private', 'aerial-work', 'ferry'];
const periodic: readonly RecordKind[] = ['annual-inspection', 'hundred-hour-inspection', 'condition-inspection'];

/** Flights and airplanes for which 91.207(a) asks nothing, each with the conditions of its own. Any one is enough. */
export function excepted(facts: Facts): readonly Clause[] {
  const { seats } = facts.dossier.configuration.aircraft;
  return [
    // A claim of local training on a flight for another purpose is none.
    flight(
      'local-training-within-50-nm',
      { localTrainingNm: eltTrainingNm.value, purpose: ['training-own-aircraft', 'training-provided', 'rental'] },
      { source: exceptions.training },
    ),
    ...ferries(facts),
    by('design-or-test', noOrdinaryFlight),
    allOf(
      'new-aircraft-on-delivery',
      [by('manufacture-or-delivery', noOrdinaryFlight), stillNew(facts)],
      'cannot-tell',
    ),
    by('aerial-application', ['aerial-work']),
    allOf(
      'research-and-development-certificate',
      [by('research-and-development', noOrdinaryFlight), experimental(facts)],
      'cannot-tell',
    ),
    by('compliance-or-exhibition', [...noOrdinaryFlight, 'training-own-aircraft']),
    fact(seats === null ? null : seats === 1, 'equipped-for-one-person', 'configuration.aircraft.seats', {
      source: exceptions.onePerson,
    }),
  ];
}

/** With nobody but the required crew, for one of two errands. */
function ferries(facts: Facts): readonly Clause[] {
  const extra = { source: exceptions.ferry };
  const ferry = (label: string, errand: Errand | 'unsaid') =>
    flight(label, { purpose: ['ferry'], crewOnly: true, errand: [errand] }, extra);
  return [
    ferry('newly-acquired-to-where-one-is-fitted', 'newly-acquired'),
    allOf(
      'inoperative-one-to-where-it-is-repaired',
      [ferry('ferry-to-repair-with-required-crew', 'to-repair-of-elt'), transmitterAboard(facts)],
      'cannot-tell',
    ),
    // Why it is ferried only the asker knows.
    allOf(
      'ferry-for-a-transmitter',
      [ferry('ferry-with-required-crew-only', 'unsaid'), unknown('errand-of-the-ferry', [], extra)],
      'cannot-tell',
    ),
  ];
}

/** What is carried to be repaired is there, though it does not work; an airplane that never had one has none to repair. */
function transmitterAboard(facts: Facts): Clause {
  const label = 'transmitter-aboard';
  const extra = { source: exceptions.ferry };
  const units = [...facts.units.values()];
  if (units.some((each) => each.functions.has('elt'))) return met(label, extra);
  if (units.some((each) => each.functions.size === 0)) return unknown(label, ['configuration.units'], extra);
  return noneFitted(facts, label, exceptions.ferry);
}

function by(errand: keyof typeof exceptions & Errand, purpose: readonly Purpose[]): Clause {
  return flight(errand, { errand: [errand], purpose }, { source: exceptions[errand] });
}

/** No periodic inspection on record says nothing by itself: only until the first could have been due is there none to be missing. */
function stillNew(facts: Facts): Clause {
  const had = facts.dossier.status.records.find(
    (each) => periodic.includes(each.kind) && each.subjects.includes('aircraft'),
  );
  const label = 'new-aircraft';
  const extra = { source: exceptions.newness };
  if (had) return notMet(label, { ...extra, evidence: [had.id] });
  const { manufactured } = facts.dossier.configuration.aircraft;
  // Asked of a delivery alone, so that no other flight is told that the day is missing.
  if (manufactured === null) return unknown(label, [], extra);
  const firstDue = endOfDay(facts, lastGoodDay(manufactured, calendarMonths.annual.value));
  return within(label, { before: firstDue }, extra, 'met', 'cannot-tell');
}

/** Certificates for research and development are experimental ones (21.191); which of them this is the errand says. */
function experimental(facts: Facts): Clause {
  const { certificate } = facts.dossier.configuration.aircraft;
  return fact(
    certificate === null ? null : certificate === 'experimental',
    'experimental-certificate',
    'configuration.aircraft.certificate',
    { source: exceptions['research-and-development'] },
  );
}
