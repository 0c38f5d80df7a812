import { factWords } from '@tallywing/rules';
import type { Names } from '@tallywing/rules';
import { countWords, listWords } from '../../../ui/words.js';
import type { FleetRow } from '../query.js';
import { visitWords } from '../words.js';

/** Facts of each visit that are listed at once; the rest is on the screen of the aircraft. */
const MOST_SHOWN = 3;

/** Where to go for what is missing on one aircraft, with the facts that settle most. */
export function FleetVisits({ visits }: { visits: FleetRow['visits'] }) {
  if (visits.length === 0) return <p className="tw-soft">Nothing is missing that any rule asks for.</p>;
  return (
    <ul className="tw-taking-on-visits">
      {visits.map(({ visit, names, facts, opens, settles }) => (
        <li key={visit}>
          <h3>{visitWords[visit].title}</h3>
          <p className="tw-soft tw-small">
            {gainWords(
              settles,
              opens.map(({ name }) => name),
            )}
          </p>
          <ol>
            {facts.slice(0, MOST_SHOWN).map(({ fact }) => (
              <li key={fact}>{factWords(fact, names as Names)}</li>
            ))}
          </ol>
          {facts.length > MOST_SHOWN && <p className="tw-soft tw-small">and {facts.length - MOST_SHOWN} more</p>}
        </li>
      ))}
    </ul>
  );
}

/** 'Settles 4 answers and opens IFR rental.' */
export function gainWords(settles: number, opens: readonly string[]): string {
  const parts = [
    ...(settles > 0 ? [`settles ${countWords(settles, 'answer')}`] : []),
    ...(opens.length > 3 ? [`opens ${opens.length} flights`] : opens.length > 0 ? [`opens ${listWords(opens)}`] : []),
  ];
  if (parts.length === 0) return 'Settles nothing by itself.';
  const text = listWords(parts);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
