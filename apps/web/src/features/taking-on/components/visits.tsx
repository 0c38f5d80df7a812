import type { Gaps } from '@tallywing/rules';
import { Link } from 'react-router';
import type { Names } from '@tallywing/rules';
import { countWords } from '../../../ui/words.js';
import type { VisitName } from '../query.js';
import { grouped, missingWords, visitWords, type FactGroup } from '../words.js';
import { gainWords } from './fleet-visits.js';
import type { Found } from './record-here.js';

/** What is missing, by where one has to go for it; the visit that settles most comes first. */
export function Visits({ gaps, found }: { gaps: Gaps; found: Found }) {
  const { aircraft, names, profiles } = found;
  const flight = (id: string) => profiles.find((each) => each.id === id)?.name ?? id;
  if (gaps.visits.length === 0)
    return <p className="tw-sheet">Nothing is missing that any rule asks for. What is due or open stands elsewhere.</p>;
  return (
    <div className="tw-taking-on-visits">
      {gaps.visits.map(({ visit, facts, opens, settles }) => (
        <section key={visit} className="tw-sheet tw-stack" aria-labelledby={`visit-${visit}`}>
          <h2 id={`visit-${visit}`}>{visitWords[visit.toUpperCase() as VisitName].title}</h2>
          <p className="tw-soft">
            All of it together, if it turns out well: {gainWords(settles.length, opens.map(flight))}
          </p>
          <ol className="tw-taking-on-facts">
            {grouped(facts, aircraft.id, names).map((group) => (
              <li key={group.facts[0]?.fact}>
                <Missing group={group} names={names} flight={flight} />
              </li>
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

interface MissingProps {
  readonly group: FactGroup;
  readonly names: Names;
  readonly flight: (id: string) => string;
}

function Missing({ group: { facts, ways }, names, flight }: MissingProps) {
  const [first] = facts;
  if (!first) return null;
  const alone = first.opens.length + first.settles.length > 0;
  return (
    <>
      {facts.length === 1 ? (
        <span>{missingWords(first, names)}</span>
      ) : (
        <details>
          <summary>{countWords(facts.length, 'fact')} that are recorded together</summary>
          <ul>
            {facts.map((each) => (
              <li key={each.fact}>{missingWords(each, names)}</li>
            ))}
          </ul>
        </details>
      )}{' '}
      <span className="tw-soft tw-small">
        {alone
          ? gainWords(first.settles.length, first.opens.map(flight))
          : 'Settles something only together with others.'}
      </span>
      <span className="tw-row tw-small tw-no-print">
        {ways.map(({ to, words }) =>
          to.startsWith('#') ? (
            <a key={to} href={to}>
              {words}
            </a>
          ) : (
            <Link key={to} to={to}>
              {words}
            </Link>
          ),
        )}
      </span>
    </>
  );
}
