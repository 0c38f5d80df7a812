import { codeWords, jobOfHold, lowerFirst, factWords } from '@tallywing/rules';
import type { Names } from '@tallywing/rules';

/** What each change of the closed list is called when it is advice. */
const doing: Readonly<Record<string, string>> = {
  'record.add': 'Do and record',
  'unit.install': 'Fit',
  'unit.remove': 'Take out',
  'unit.amend': 'Complete what is recorded of',
  'unit.deactivate': 'Deactivate and placard',
  'unit.reactivate': 'Reactivate',
  'link.connect': 'Join the ports of',
  'link.disconnect': 'Part the joint',
  'antenna.fit': 'Fit an antenna for',
  'placard.fit': 'Fit the placard for',
  'placard.remove': 'Take off the placard of',
  'supplement.set': 'Put the flight manual supplement in order for',
  'database.load': 'Load the database of',
  'touched.state': 'Say what the work touched:',
  'defect.defer': 'Defer',
  'defect.close': 'Repair and close',
  'say-so.give': 'Have a named person say so for',
  'mass.note': 'Note the change of weight',
  'mass.revise': 'Revise the empty weight',
  'directive.set': 'Comply with, or settle, directive',
  'meter.read': 'Read the meter',
  adopt: 'Accept as found',
  'completeness.state': 'State that the list is complete:',
  'authority.set': 'Record the kinds of operation allowed',
  'aircraft.amend': 'Complete the facts of the aircraft',
  'equipment.state': 'Record the required equipment',
  'record.correct': 'Complete the entry',
  'static-system.set': 'Record the static system',
  'meter.define': 'Record which meter stands for time in service',
  'opening.set': 'Measure the opening of',
  'electrical.set': 'Complete the record of circuits:',
  'recurring.set': 'Complete the recurring item',
  'life-limit.set': 'Complete the life limit of',
  'life-limit.end': 'Replace the life-limited part',
  'identity.set': 'Set and record what ADS-B Out sends:',
  'paper.set': 'Put in order and record the paper',
  'pack.set': 'Give the documents their place:',
  'decision.record': 'Have a named person decide, and record it, for',
};

export interface RemedyLike {
  readonly kind: string;
  readonly change: string;
  readonly subject: string;
  readonly facts: readonly string[];
}

/** One remedy as a line: what to do, or what to find out. */
export function remedyWords(remedy: RemedyLike, names: Names): string {
  // The papers as a whole are named by the verb.
  const name = (subject: string) => (subject === 'papers' ? '' : (names[subject] ?? codeWords(subject)));
  if (remedy.kind === 'find-out' && remedy.facts.length > 0)
    return `Find out and record: ${remedy.facts.map((fact) => lowerFirst(factWords(fact, names))).join('; ')}`;
  // A hold is named by its reason, which stands beside it; that of a job ends with the release.
  if (remedy.change === 'hold.lift') return jobOfHold(remedy.subject) === null ? 'Lift the hold' : 'Release the work';
  const verb = doing[remedy.change] ?? codeWords(remedy.change.replace('.', ' '));
  const subject = remedy.change === 'record.add' ? entrySubject(remedy.subject, name) : name(remedy.subject);
  return `${verb} ${subject === 'Aircraft' ? '' : lowerFirst(subject)}`.trim();
}

/** An entry to make is named by its kind, and by what it is of where that is not the aircraft: 'altimeter-test:alt1'. */
function entrySubject(subject: string, name: (subject: string) => string): string {
  const [kind = '', of] = subject.split(':');
  return of === undefined || of === 'aircraft' ? codeWords(kind) : `${codeWords(kind)} of ${name(of)}`;
}
