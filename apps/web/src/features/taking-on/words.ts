import type { Dossier, MissingFact } from '@tallywing/rules';
import { pathWords } from '../../trade/reasons.js';
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
  identities: 'what ADS-B Out sends',
  antennas: 'antenna',
  placards: 'placard',
  openings: 'opening',
  loads: 'database',
};

/** A missing fact as a person looks for it. Without the record of the aircraft, units go by their short names. */
export function factWords(fact: string, dossier: Dossier | null = null): string {
  const [part = '', noun = '', id = '', ...rest] = fact.split('.');
  if (part === 'status' && noun === 'completeness')
    return `Whether the list of ${codeWords(id).toLowerCase()} is complete`;
  if (fact === 'status.records') return 'Entries that may exist and that nobody recorded';
  if (fact === 'configuration.papers') return 'Papers aboard and on file';
  const what = nouns[noun];
  if (what === undefined || id === '') return sentence(pathWords(fact));
  const named = noun === 'equipment' ? codeWords(id).toLowerCase() : subjectWords(id, dossier);
  const of = rest.length === 0 ? '' : `: ${rest.map((each) => pathWords(each)).join(', ')}`;
  return sentence(`${what} ${named}${of}`);
}

/** The same with the kinds of entry that would settle it. */
export function missingWords({ fact, by }: MissingFact, dossier: Dossier): string {
  const kinds = fact === 'status.records' ? by.map(({ subject }) => recordKindWords(subject.split(':')[0] ?? '')) : [];
  const words = factWords(fact, dossier);
  return kinds.length === 0 ? words : `${words}: ${listWords([...new Set(kinds)].map((each) => each.toLowerCase()))}`;
}

/** Where the job screen takes the fact; null where it is recorded right here. */
export function jobLink(aircraftId: string, change: string, subject: string): string | null {
  if (change === 'adopt' || change === 'completeness.state') return null;
  const asked = new URLSearchParams({ record: change, about: subject });
  return `/aircraft/${aircraftId}/job?${asked.toString()}`;
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
