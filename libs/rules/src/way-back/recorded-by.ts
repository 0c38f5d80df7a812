import { partsOf } from '../words/fact-words.js';

/** The change that records a fact, and what it is about. */
export interface Recording {
  readonly change: string;
  readonly subject: string;
}

/** Facts that one change alone records, whatever asks for them. */
const only: Readonly<Record<string, string>> = {
  aircraft: 'aircraft.amend',
  authority: 'authority.set',
  equipment: 'equipment.state',
  electrical: 'electrical.set',
  supplements: 'supplement.set',
  identities: 'identity.set',
  papers: 'paper.set',
  openings: 'opening.set',
  packs: 'pack.set',
  loads: 'database.load',
  directives: 'directive.set',
  recurring: 'recurring.set',
  lifeLimits: 'life-limit.set',
  decisions: 'decision.record',
  timeInService: 'meter.define',
  definitions: 'meter.define',
  utilisation: 'utilisation.set',
};

/** Facts that are recorded in more ways than one: how, where no rule says which. */
const usual: Readonly<Record<string, string>> = {
  mass: 'mass.revise',
  units: 'unit.amend',
  placards: 'placard.fit',
  antennas: 'antenna.fit',
  records: 'record.add',
  completeness: 'completeness.state',
  readings: 'meter.read',
};

/** How a fact is recorded: as the rules that ask for it say, unless its kind knows one way only. Of no kind and asked by no way: none. */
export function recordedBy(fact: string, asking: readonly Recording[]): readonly Recording[] {
  const named = [...new Map(asking.map((each) => [`${each.change}|${each.subject}`, each])).values()];
  const { part, noun, id } = partsOf(fact, {});
  if (part === 'catalogue') return named;
  if (noun === 'records' && id !== '') return [{ change: 'record.correct', subject: id }];
  const sole = only[noun];
  if (sole !== undefined)
    return [{ change: sole, subject: named.find(({ change }) => change === sole)?.subject ?? nameOf(noun, id) }];
  const way = usual[noun];
  return named.length > 0 || way === undefined ? named : [{ change: way, subject: nameOf(noun, id) }];
}

/** What is no list has no names within it: the fact is of the aircraft. */
function nameOf(noun: string, id: string): string {
  return ofAircraft.has(noun) || id === '' ? 'aircraft' : id;
}

const ofAircraft = new Set([
  'aircraft',
  'authority',
  'mass',
  'electrical',
  'timeInService',
  'definitions',
  'utilisation',
]);
