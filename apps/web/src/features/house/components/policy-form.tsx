import { useMutation } from '@apollo/client/react';
import { localTimeAt } from '@tallywing/rules';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { clockNow } from '../../../trade/time.js';
import { Button } from '../../../ui/button.js';
import { Checks } from '../../../ui/checks.js';
import { Field } from '../../../ui/field.js';
import { bodyOf, draftOf, numberProblem, roleOptions, statusOptions, type PolicyDraft } from '../policy-draft.js';
import { SetHousePolicyMutation, type HousePolicy } from '../query.js';

export interface PolicyFormProps {
  readonly policy: HousePolicy;
  /** Whose today the form begins with. */
  readonly zone: string;
  readonly reload: () => Promise<unknown>;
  readonly onDone: () => void;
}

const fields = [
  'from',
  'reason',
  'readingAge.days',
  'readingAge.noticeDays',
  'dayCount.count',
  'weakSource.statuses',
  'weakSource.by',
];

/** A new version of one policy, with its day and the reason for it. */
export function PolicyForm({ policy, zone, reload, onDone }: PolicyFormProps) {
  const { kind, version } = policy;
  const [draft, setDraft] = useState(() => draftOf(policy, localTimeAt(clockNow(), zone).slice(0, 10)));
  const [tried, setTried] = useState(false);
  const { run, busy, problem, at } = useAct();
  const [set] = useMutation(SetHousePolicyMutation);
  const put = (part: Partial<PolicyDraft>) => setDraft({ ...draft, ...part });
  const wrong = kind === 'reading-age' ? numberProblem(draft) : null;
  const says = (field: string) => (tried && wrong?.[0] === field ? wrong[1] : at(field));
  async function send() {
    const { from, reason } = draft;
    await set({ variables: { input: { kind, expectedVersion: version, from, reason, ...bodyOf(kind, draft) } } });
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (wrong !== null) return;
        void run(send, 'The policy is set; the aircraft are judged again.').then((done) => {
          if (done) onDone();
        });
      }}
    >
      <Body kind={kind} draft={draft} put={put} says={says} />
      <div className="tw-fields">
        <Field label="Counts from" error={says('from')}>
          <input type="date" value={draft.from} onChange={(event) => put({ from: event.target.value })} />
        </Field>
        <Field label="Why the house sets it so" error={says('reason')}>
          <input value={draft.reason} maxLength={200} onChange={(event) => put({ reason: event.target.value })} />
        </Field>
      </div>
      <ProblemNote problem={problem} fields={fields} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Set the policy
        </Button>
      </div>
    </form>
  );
}

interface BodyProps {
  readonly kind: string;
  readonly draft: PolicyDraft;
  readonly put: (part: Partial<PolicyDraft>) => void;
  readonly says: (field: string) => string | null;
}

function Body({ kind, draft, put, says }: BodyProps) {
  if (kind === 'reading-age')
    return (
      <div className="tw-fields">
        <Field label="Days for which a reading counts" error={says('readingAge.days')}>
          <input inputMode="numeric" value={draft.days} onChange={(event) => put({ days: event.target.value })} />
        </Field>
        <Field label="Remarked on after days" optional error={says('readingAge.noticeDays')}>
          <input
            inputMode="numeric"
            value={draft.noticeDays}
            onChange={(event) => put({ noticeDays: event.target.value })}
          />
        </Field>
      </div>
    );
  if (kind === 'day-count')
    return (
      <Field label="Last good day of a 30-day check" error={says('dayCount.count')}>
        <select value={draft.count} onChange={(event) => put({ count: event.target.value })}>
          <option value="usual">the 30th day after it</option>
          <option value="earlier">the 29th day after it</option>
        </select>
      </Field>
    );
  return (
    <>
      <Checks
        legend="Sources behind a yes that want a say-so"
        options={statusOptions}
        ticked={draft.statuses}
        onTick={(statuses) => put({ statuses: statuses ?? [] })}
        error={says('weakSource.statuses')}
      />
      <Checks
        legend="Whose say-so counts"
        options={roleOptions}
        ticked={draft.by}
        onTick={(by) => put({ by: by ?? [] })}
        error={says('weakSource.by')}
      />
    </>
  );
}
