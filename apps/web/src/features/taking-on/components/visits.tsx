import type { Dossier, Gaps, MissingFact } from '@tallywing/rules';
import { Link } from 'react-router';
import { remedyWords } from '../../../trade/remedies.js';
import { countWords } from '../../../ui/words.js';
import type { VisitName } from '../query.js';
import { jobLink, missingWords, visitWords } from '../words.js';
import { gainWords } from './fleet-visits.js';
import type { Found } from './record-here.js';

/** What is missing, by where one has to go for it; the visit that settles most comes first. */
export function Visits({ gaps, found }: { gaps: Gaps; found: Found }) {
  const { aircraft, dossier, profiles } = found;
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
            {facts.map((each) => (
              <li key={each.fact}>
                <Missing fact={each} dossier={dossier} aircraftId={aircraft.id} flight={flight} />
              </li>
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

interface MissingProps {
  readonly fact: MissingFact;
  readonly dossier: Dossier;
  readonly aircraftId: string;
  readonly flight: (id: string) => string;
}

function Missing({ fact, dossier, aircraftId, flight }: MissingProps) {
  const ways = fact.by.flatMap(({ change, subject }) => {
    const to = jobLink(aircraftId, change, subject);
    return to === null ? [] : [{ to, words: remedyWords({ kind: 'do', change, subject, facts: [] }) }];
  });
  return (
    <>
      <span>{missingWords(fact, dossier)}</span>{' '}
      <span className="tw-soft tw-small">
        {fact.opens.length + fact.settles.length === 0
          ? `asked for by ${countWords(fact.by.length, 'rule')} together with others`
          : gainWords(fact.settles.length, fact.opens.map(flight))}
      </span>
      {ways.length > 0 && (
        <span className="tw-row tw-small tw-no-print">
          {ways.map(({ to, words }) => (
            <Link key={to} to={to}>
              {words}
            </Link>
          ))}
        </span>
      )}
    </>
  );
}
