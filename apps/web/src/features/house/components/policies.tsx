import { dateWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { still } from '../../../app/live/refresh.js';
import { problemOf } from '../../../app/problem.js';
import { Button } from '../../../ui/button.js';
import { Sheet } from '../../../ui/sheet.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { policyTexts, policyWords, standingOf } from '../policy-words.js';
import { HousePoliciesQuery, type HousePolicy } from '../query.js';
import { PolicyForm } from './policy-form.js';

export interface PoliciesProps {
  readonly zone: string;
  readonly mayWrite: boolean;
  readonly reload: () => Promise<unknown>;
}

/** What the house sets for the judgement of its aircraft: what counts now, what is to come, and what counted before. */
export function Policies({ zone, mayWrite, reload }: PoliciesProps) {
  const { data, error, refetch } = useQuery(HousePoliciesQuery, still);
  const [open, setOpen] = useState<string | null>(null);
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the policies" />;
  const saved = () => Promise.all([refetch(), reload()]);
  return (
    <section className="tw-stack" aria-labelledby="policies">
      <h2 id="policies">Policies</h2>
      <p className="tw-soft">
        Each counts from the beginning of its day where the aircraft lives. Every aircraft is judged again when one is
        set; what was shown before stays as it was. No policy asks less than the rules do.
      </p>
      {data.housePolicies.map((policy) => (
        <div key={policy.kind} className="tw-sheet tw-stack">
          <Shown policy={policy} />
          {open === policy.kind ? (
            <Sheet title={`Set: ${policyTexts[policy.kind]?.title ?? policy.kind}`} onClose={() => setOpen(null)}>
              <PolicyForm
                key={policy.version}
                policy={policy}
                zone={zone}
                reload={saved}
                onDone={() => setOpen(null)}
              />
            </Sheet>
          ) : (
            mayWrite && (
              <div className="tw-row tw-no-print">
                <Button
                  aria-label={`Set: ${policyTexts[policy.kind]?.title ?? policy.kind}`}
                  onClick={() => setOpen(policy.kind)}
                >
                  Set
                </Button>
              </div>
            )
          )}
        </div>
      ))}
    </section>
  );
}

function Shown({ policy }: { policy: HousePolicy }) {
  const { now, coming, earlier } = standingOf(policy);
  const text = policyTexts[policy.kind];
  return (
    <>
      <h3>{text?.title ?? policy.kind}</h3>
      <p className="tw-soft tw-small">{text?.about}</p>
      <p>
        {now === null ? (
          'Nothing is set.'
        ) : (
          <>
            <strong>{policyWords(policy.kind, now.body)}</strong>, <Set version={now} />
          </>
        )}
      </p>
      {coming.map((each) => (
        <p key={each.version}>
          From {dateWords(each.from)}: {policyWords(policy.kind, each.body)}. <Set version={each} />
        </p>
      ))}
      {earlier.length > 0 && (
        <details>
          <summary>Earlier versions ({earlier.length})</summary>
          <ul>
            {earlier.map((each) => (
              <li key={each.version}>
                {policyWords(policy.kind, each.body)}, <Set version={each} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Set({ version }: { version: HousePolicy['versions'][number] }) {
  return (
    <span className="tw-soft">
      from {dateWords(version.from)}, set by {version.setBy}: {version.reason}
    </span>
  );
}
