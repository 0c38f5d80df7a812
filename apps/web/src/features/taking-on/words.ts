import type { Dossier, MissingFact } from '@tallywing/rules';
import { pathWords } from '../../trade/reasons.js';
import { remedyWords } from '../../trade/remedies.js';
import { codeWords, recordKindWords } from '../../trade/words.js';
import { listWords } from '../../ui/words.js';
import type { VisitName } from './query.js';

/** What each visit is called, and where one goes for it. */
export const visitWords: Readonly<Record<VisitName, { readonly title: string; readonly short: string }>> = {
  AIRCRAFT: { title: 'Look at the aircraft', short: 'at the aircraft' },
  PAPERS: { title: 'Look into its books and papers', short: 'in its books and papers' },
  PERSON: { title: 'Have a named person state it', short: 'by a named person' },
};

const nouns: Readonly<Record<string, string>> = {
  units: 'unit',
  equipment: 'required item',
  links: 'joint',
  identities: 'ADS-B Out settings of',
  antennas: 'antenna',
  placards: 'placard',
  openings: 'opening',
  loads: 'database of',
};

const slots: Readonly<Record<string, string>> = { this: 'cycle in use', next: 'next cycle' };

/** A missing fact as a person looks for it. Without the record of the aircraft, units go by their short names. */
export function factWords(fact: string, dossier: Dossier | null = null): string {
  const { part, noun, id, rest } = partsOf(fact, dossier);
  if (part === 'status' && noun === 'completeness')
    return `Whether the list of ${codeWords(id).toLowerCase()} is complete`;
  if (fact === 'status.records') return 'Entries that may exist and that nobody recorded';
  if (fact === 'configuration.papers') return 'Papers aboard and on file';
  if (noun === 'aircraft') return sentence(`${pathWords([id, ...rest].join('.'))} of the aircraft`);
  const what = nouns[noun];
  if (what === undefined || id === '') return sentence(pathWords(fact));
  const named = noun === 'equipment' ? codeWords(id).toLowerCase() : subjectWords(id, dossier);
  const of = rest.length === 0 ? '' : `: ${rest.map((each) => slots[each] ?? pathWords(each)).join(', ')}`;
  return sentence(`${what} ${named}${of}`);
}

/** Joints have dots in their short names: what the record knows is taken whole, else all but the last word of the path. */
function partsOf(fact: string, dossier: Dossier | null) {
  const [part = '', noun = '', ...below] = fact.split('.');
  const path = below.join('.');
  const known =
    noun === 'links'
      ? (dossier?.configuration.links.find(({ id }) => path === id || path.startsWith(`${id}.`))?.id ??
        below.slice(0, -1).join('.'))
      : (below[0] ?? '');
  const rest = path.slice(known.length + 1);
  return { part, noun, id: known, rest: rest === '' ? [] : rest.split('.') };
}

/** The same with the kinds of entry that would settle it. */
export function missingWords({ fact, by }: MissingFact, dossier: Dossier): string {
  const kinds = fact === 'status.records' ? by.map(({ subject }) => recordKindWords(subject.split(':')[0] ?? '')) : [];
  const words = factWords(fact, dossier);
  return kinds.length === 0 ? words : `${words}: ${listWords([...new Set(kinds)].map((each) => each.toLowerCase()))}`;
}

/** A way to record something: on this screen, or on the job screen with a form that is begun. */
export interface Way {
  readonly to: string;
  readonly words: string;
}

/** How the fact is recorded, by the rules that ask for it; where they name nothing, by what kind of fact it is. */
export function waysOf({ fact, by }: Pick<MissingFact, 'fact' | 'by'>, aircraftId: string, dossier: Dossier): Way[] {
  const ways = by.length > 0 ? by : usualWay(fact, dossier);
  const found = ways.map(({ change, subject }): Way => {
    if (change === 'completeness.state') return { to: '#state-lists', words: 'State it below' };
    if (change === 'adopt') return { to: '#accept', words: 'Accept as found, below' };
    if (change === 'record.add' && (subject === '' || subject === 'aircraft'))
      return jobWay(aircraftId, change, '', 'Record an entry');
    if (change === 'equipment.state')
      return jobWay(aircraftId, change, partsOf(fact, dossier).id, 'Record the required equipment');
    const words = remedyWords({ kind: 'do', change, subject, facts: [] }, (each) => remedySubject(each, dossier));
    return jobWay(aircraftId, change, subject, words);
  });
  return [...new Map(found.map((way) => [way.words, way])).values()];
}

function remedySubject(subject: string, dossier: Dossier): string {
  if (subject === 'papers') return '';
  const words = subjectWords(subject, dossier);
  return words === subject ? codeWords(subject) : words;
}

function jobWay(aircraftId: string, change: string, about: string, words: string): Way {
  return { to: `/aircraft/${aircraftId}/job?${new URLSearchParams({ record: change, about }).toString()}`, words };
}

const usual: Readonly<Record<string, string>> = {
  aircraft: 'aircraft.amend',
  authority: 'authority.set',
  equipment: 'equipment.state',
  units: 'unit.amend',
  mass: 'mass.revise',
  electrical: 'electrical.set',
  supplements: 'supplement.set',
  identities: 'identity.set',
  papers: 'paper.set',
  placards: 'placard.fit',
  antennas: 'antenna.fit',
  openings: 'opening.set',
  packs: 'pack.set',
  records: 'record.add',
  loads: 'database.load',
  directives: 'directive.set',
  recurring: 'recurring.set',
  lifeLimits: 'life-limit.set',
  decisions: 'decision.record',
  completeness: 'completeness.state',
  readings: 'meter.read',
  timeInService: 'meter.define',
  definitions: 'meter.define',
  utilisation: 'utilisation.set',
};

function usualWay(fact: string, dossier: Dossier): { readonly change: string; readonly subject: string }[] {
  const { noun, id } = partsOf(fact, dossier);
  const change = usual[noun];
  if (change === undefined) return [];
  return [{ change, subject: noun === 'records' || noun === 'aircraft' ? '' : id }];
}

export interface FactGroup {
  readonly facts: readonly MissingFact[];
  readonly ways: readonly Way[];
}

/** Facts that settle nothing by themselves and are recorded in the same way stand together: one form takes them all. */
export function grouped(facts: readonly MissingFact[], aircraftId: string, dossier: Dossier): FactGroup[] {
  const groups = new Map<string, { facts: MissingFact[]; ways: Way[] }>();
  for (const each of facts) {
    const ways = waysOf(each, aircraftId, dossier);
    const alone = each.opens.length + each.settles.length > 0;
    const key = alone
      ? each.fact
      : usual[partsOf(each.fact, dossier).noun] === 'equipment.state'
        ? 'equipment'
        : ways.map(({ to }) => to).join();
    const group = groups.get(key);
    if (group) group.facts.push(each);
    else groups.set(key, { facts: [each], ways });
  }
  const items = groups.get('equipment');
  if (items) {
    const about = items.facts.map(({ fact }) => partsOf(fact, dossier).id).join(',');
    items.ways = [jobWay(aircraftId, 'equipment.state', about, 'Record the required equipment')];
  }
  return [...groups.values()];
}

/** A unit with its serial number, a joint by its ends; the short name where neither is known. */
export function subjectWords(id: string, dossier: Dossier | null): string {
  if (dossier === null) return id;
  const { units, links } = dossier.configuration;
  const unit = units.find((each) => each.id === id);
  if (unit) return unit.serial === null ? unit.name : `${unit.name}, serial ${unit.serial}`;
  const link = links.find((each) => each.id === id);
  return link
    ? `${subjectWords(link.fromUnit, dossier)} ${link.fromPort} to ${subjectWords(link.toUnit, dossier)} ${link.toPort}`
    : id;
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
