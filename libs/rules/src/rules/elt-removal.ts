import { newestFirst } from '../changes/records.js';
import { eltRemovedDays } from '../facts/elt.js';
import type { RecordHead } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { addDays } from '../time/calendar.js';
import type { CivilDate } from '../time/instant.js';
import { allOf, anyOf, fact, met, notMet, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { cfr } from './cite.js';
import { signerNamed } from './entry-signer.js';
import { endOfDay } from './periodic.js';
import { release } from './who-may.js';

const source = cfr('91.207(f)(10)');

export interface Removal {
  readonly clause: Clause;
  readonly on: CivilDate | null;
  readonly lastDay: CivilDate | null;
}

/** The emergency transmitter is out of the airplane for a while: entered, placarded in view, for 90 days at most. */
export function temporaryRemoval(facts: Facts): Removal {
  const units = [...facts.units.values()];
  const initial = initialRemoval(facts);
  // Deactivated or due is not removed: the transmitter is still there and has to be in order.
  if (units.some((each) => each.functions.has('elt')) || initial === null)
    return { clause: notMet('removed-for-a-while', { source }), on: null, lastDay: null };
  const evidence = [initial.id];
  const on = initial.done.date;
  const lastDay = addDays(on, eltRemovedDays.value);
  const parts = [
    units.some((each) => each.functions.size === 0)
      ? unknown('no-transmitter-fitted', ['configuration.units'], { source })
      : met('no-transmitter-fitted', { source }),
    initial.evidence === 'entry-seen'
      ? met('entry-seen', { source, evidence })
      : notMet('entry-seen', { source, evidence }),
    ...signed(facts, initial),
    fact(
      initial.note === null ? null : wordsIn(initial.note) >= toldByEntry.length,
      'make-model-serial-and-reason-entered',
      `status.records.${initial.id}.note`,
      { source, evidence },
    ),
    placardInView(facts),
    within(
      'at-most-90-days-after-removal',
      { before: endOfDay(facts, lastDay) },
      { source, evidence, limit: { amount: eltRemovedDays.value, unit: 'days' } },
    ),
  ];
  return { clause: allOf('removed-for-a-while', parts, 'cannot-tell'), on, lastDay };
}

/** Taking it out is maintenance: no unit of a tray that a pilot may exchange. */
function signed(facts: Facts, removal: RecordHead): readonly Clause[] {
  const task = release(new Set(['elt'] as const), facts.dossier.configuration.aircraft.certificate);
  const may = removal.agency === null ? null : task.may(removal.agency);
  const extra = { source: task.source, evidence: [removal.id] };
  return [
    fact(may, 'signer-allowed', `status.records.${removal.id}.agency`, extra),
    signerNamed(removal, cfr('43.9(a)')),
  ];
}

/** What the entry tells besides its date. Fewer words than these cannot; whether more do, a person reads. */
const toldByEntry = ['make', 'model', 'serial number', 'reason'] as const;

function wordsIn(note: string): number {
  return [...note.matchAll(/\S+/g)].length;
}

/** The text counts from the initial removal: a second entry does not start the days again unless the transmitter was back. */
function initialRemoval(facts: Facts) {
  const { records } = facts.dossier.status;
  const removals = records.filter((each) => each.kind === 'elt-removal').sort(newestFirst);
  const [newest] = removals;
  if (!newest) return null;
  // An inspection looks at the installation (91.207(d)(1)): one between two removals shows that it was back.
  const back = records
    .filter((each) => each.kind === 'elt-inspection' && each.evidence === 'entry-seen')
    .map((each) => each.done.date);
  const same = removals.filter(({ done }) => !back.some((day) => day > done.date && day <= newest.done.date));
  return same.at(-1) ?? newest;
}

function placardInView(facts: Facts): Clause {
  const placards = facts.dossier.configuration.placards.filter((each) => each.kind === 'elt-removed');
  const none =
    facts.complete('placards') === null
      ? unknown('placard-in-view', ['configuration.placards'], { source })
      : notMet('placard-in-view', { source });
  const seen = placards.map((each) =>
    fact(each.inView, 'placard-in-view', `configuration.placards.${each.id}.inView`, { source }),
  );
  return anyOf('placard', seen.length > 0 ? seen : [none], 'cannot-tell');
}
