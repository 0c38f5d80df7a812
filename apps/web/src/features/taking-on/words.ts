import { codeWords, factWords, partsOf } from '@tallywing/rules';
import type { MissingFact } from '@tallywing/rules';
import { remedyWords } from '../../trade/remedies.js';
import type { Names } from '@tallywing/rules';
import { listWords } from '../../ui/words.js';
import type { VisitName } from './query.js';

/** What each visit is called, and where one goes for it. */
export const visitWords: Readonly<Record<VisitName, { readonly title: string; readonly short: string }>> = {
  AIRCRAFT: { title: 'Look at the aircraft', short: 'at the aircraft' },
  PAPERS: { title: 'Look into its books and papers', short: 'in its books and papers' },
  PERSON: { title: 'Have a named person state it', short: 'by a named person' },
};

/** A missing fact with the kinds of entry that would settle it. */
export function missingWords({ fact, by }: MissingFact, names: Names): string {
  const kinds = fact === 'status.records' ? by.map(({ subject }) => codeWords(subject.split(':')[0] ?? '')) : [];
  const words = factWords(fact, names);
  return kinds.length === 0 ? words : `${words}: ${listWords([...new Set(kinds)].map((each) => each.toLowerCase()))}`;
}

/** A way to record something: on this screen, or on the job screen with a form that is begun. */
export interface Way {
  readonly to: string;
  readonly words: string;
}

/** Where the fact is recorded. */
export function waysOf({ fact, by }: Pick<MissingFact, 'fact' | 'by'>, aircraftId: string, names: Names): Way[] {
  if (partsOf(fact, names).part === 'catalogue')
    return [{ to: '/catalogue', words: 'Revise the equipment type in the catalogue' }];
  const found = by.map(({ change, subject }): Way => {
    if (change === 'completeness.state') return { to: '#state-lists', words: 'State it below' };
    if (change === 'adopt') return { to: '#accept', words: 'Accept as found, below' };
    if (change === 'record.add' && subject === 'aircraft') return jobWay(aircraftId, change, '', 'Record an entry');
    if (change === 'equipment.state')
      return jobWay(aircraftId, change, partsOf(fact, names).id, 'Record the required equipment');
    const words = remedyWords({ kind: 'do', change, subject, facts: [] }, names);
    return jobWay(aircraftId, change, subject, words);
  });
  return [...new Map(found.map((way) => [way.words, way])).values()];
}

function jobWay(aircraftId: string, change: string, about: string, words: string): Way {
  return { to: `/aircraft/${aircraftId}/job?${new URLSearchParams({ record: change, about }).toString()}`, words };
}

export interface FactGroup {
  readonly facts: readonly MissingFact[];
  readonly ways: readonly Way[];
}

/** Facts that settle nothing by themselves and are recorded in the same way stand together: one form takes them all. */
export function grouped(facts: readonly MissingFact[], aircraftId: string, names: Names): FactGroup[] {
  const groups = new Map<string, { facts: MissingFact[]; ways: Way[] }>();
  for (const each of facts) {
    const ways = waysOf(each, aircraftId, names);
    const alone = each.opens.length + each.settles.length > 0;
    const key = alone
      ? each.fact
      : partsOf(each.fact, names).noun === 'equipment'
        ? 'equipment'
        : ways.map(({ to }) => to).join();
    const group = groups.get(key);
    if (group) group.facts.push(each);
    else groups.set(key, { facts: [each], ways });
  }
  const items = groups.get('equipment');
  if (items) {
    const about = items.facts.map(({ fact }) => partsOf(fact, names).id).join(',');
    items.ways = [jobWay(aircraftId, 'equipment.state', about, 'Record the required equipment')];
  }
  return [...groups.values()];
}
