import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, fact, implies, met, notMet, unknown, within } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import type { Counted } from '../accomplished.js';
import { accomplished } from '../accomplished.js';
import { cfr } from '../cite.js';
import { dueOn, endOfDay } from '../periodic.js';
import { governingOf } from '../recurring.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const source = cfr('91.409(e), (f)');
/** More than this is a large aircraft (14 CFR 1.1). */
const smallUpToLb = 12_500;

/** Without it an aircraft that 91.409(a) leaves to a program would be inspected by nothing. */
export const programInspection = defineRule(
  {
    id: 'program-inspection',
    topic: 'inspections',
    asks: 'A selected inspection program is named, and the entry of its last inspection says through which day the aircraft is good.',
    binds:
      'Aircraft under a selected program; large airplanes, and multiengine turbojet and turboprop airplanes, which must select one. Single-engine turboprops follow 91.409(a).',
    sources: [source, cfr('1.1')],
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
    const selected = program?.kind === 'selected-program';
    const entries = accomplished(facts, ['program-inspection'], 'aircraft', {
      by: tasks.maintenance,
      outcomes: ['approved', 'passed'],
    });
    const document = selected ? (program.document === null ? null : true) : false;
    const lastGood = governingOf(entries)?.expires ?? null;
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(
        selected ? met('needs-a-program', { source }) : mustSelect(facts),
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
      due: dueOn(facts, 'program-inspection', selected ? lastGood : null),
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

/** Turbine rotorcraft may choose between a program and 91.409(a) to (d); single reciprocating engines are small unless a weight says otherwise. */
function mustSelect(facts: Facts): Leaf {
  const { kind, engine, engineCount, maxWeightLb, certificate } = facts.dossier.configuration.aircraft;
  const no = notMet('needs-a-program', { source });
  if (kind !== 'airplane' || certificate === 'experimental' || certificate === 'light-sport') return no;
  if (maxWeightLb !== null && maxWeightLb > smallUpToLb) return met('needs-a-program', { source });
  const missing = (path: string) => unknown('needs-a-program', [`configuration.aircraft.${path}`], { source });
  if (engine === null) return missing('engine');
  if (engine === 'turbojet' || engine === 'turboprop') {
    if (engineCount === null) return missing('engineCount');
    return engineCount > 1 ? met('needs-a-program', { source }) : no;
  }
  return maxWeightLb === null && engineCount !== null && engineCount > 1 ? missing('maxWeightLb') : no;
}
