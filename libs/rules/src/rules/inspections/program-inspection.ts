import { smallUpToLb } from '../../facts/small-aircraft.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, fact, implies, met, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import type { Counted } from '../accomplished.js';
import { accomplished } from '../accomplished.js';
import { cfr } from '../cite.js';
import { maySelect, mustSelect } from '../inspection-program.js';
import { dueOn, endOfDay } from '../periodic.js';
import { governingOf } from '../recurring.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { entryOfInspection, totalTimeEntered } from '../total-time.js';
import { tasks } from '../who-may.js';

const source = cfr('91.409(e), (f)');

/** Without it an aircraft that 91.409(a) leaves to a program would be inspected by nothing. */
export const programInspection = defineRule(
  {
    id: 'program-inspection',
    topic: 'inspections',
    asks: 'A selected or approved inspection program is named, and the entry of its last inspection says through which day the aircraft is good.',
    binds:
      'Large airplanes, and multiengine turbojet and turboprop airplanes, which must select a program; turbine helicopters that chose one; aircraft under an approved program of part 125 or 135. For any other aircraft a selected program takes the place of nothing: single-engine turboprops follow 91.409(a).',
    sources: [source, cfr('91.409(c)'), smallUpToLb.source, entryOfInspection],
    messages: {
      current: 'Inspected under its program, good through {lastGood}.',
      lapsed: 'No inspection under a selected program that counts and is still good.',
      unclear: 'Whether the aircraft is inspected under a selected program cannot be told from the record.',
      'not-asked': 'The aircraft needs no selected program.',
    },
    establishes: [],
  },
  (facts) => {
    const { program } = facts.dossier.configuration.aircraft;
    const approved = program?.kind === 'approved-program';
    const selected = approved || program?.kind === 'selected-program';
    const needs = approved
      ? met('needs-a-program', { source: cfr('91.409(c)') })
      : selected
        ? maySelect(facts)
        : mustSelect(facts);
    const entries = accomplished(facts, ['program-inspection'], 'aircraft', {
      by: tasks.maintenance,
      outcomes: ['approved', 'passed'],
      also: (record) => totalTimeEntered(facts, record),
    });
    const document = selected ? (program.document === null ? null : true) : false;
    const lastGood = governingOf(entries)?.expires ?? null;
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(
        needs,
        allOf(
          'program-followed',
          [
            fact(document, 'program-named', 'configuration.aircraft.program.document', { source }),
            entries.length === 0
              ? unknown('program-inspection-recorded', ['status.records'], { source })
              : anyOf(
                  'an-entry-that-counts',
                  entries.map((each) => throughItsDay(facts, each)),
                  'cannot-tell',
                ),
          ],
          'cannot-tell',
        ),
      ),
      messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
      data: { lastGood },
      effects: [{ stops: 'capability', capability: 'fly' }],
      due: dueOn(facts, 'program-inspection', selected && needs.inside !== 'not-met' ? lastGood : null),
      remedies: [
        recordIt('program-inspection'),
        findOut('aircraft.amend', 'aircraft', 'configuration.aircraft.program', 'configuration.aircraft.engine'),
      ],
    };
    return [draft];
  },
);

/** The intervals are the program's own: only the entry can say how long it lasts. */
function throughItsDay(facts: Facts, { record, clause }: Counted): Clause {
  const extra = { source, evidence: [record.id] };
  const region =
    record.expires === null
      ? unknown('good-through-recorded', [`status.records.${record.id}.expires`], extra)
      : within('within-interval-of-program', { before: endOfDay(facts, record.expires) }, extra);
  return allOf('done-and-current', [clause, region], 'cannot-tell');
}
