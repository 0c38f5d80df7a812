import { useMutation, useQuery } from '@apollo/client/react';
import { dossierSchemaVersion } from '@tallywing/rules';
import { useState } from 'react';
import { problemOf, type Problem } from '../../../app/problem.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { useToast } from '../../../ui/toast.js';
import type { Draft } from '../draft.js';
import type { Step } from '../plan.js';
import { StartWork, type OnStart } from './start-work.js';
import { CreatePlanMutation, DiscardPlanMutation, PlansQuery, SavePlanMutation, type KeptPlan } from '../query.js';

export interface KeptPlansProps {
  readonly aircraftId: string;
  readonly draft: Draft;
  readonly onTakeUp: (steps: readonly Step[]) => void;
  readonly onStart: OnStart;
  readonly when: (instant: string) => string;
}

/** Plans that are kept with the aircraft, so that the next shift or another tablet can take them up. */
export function KeptPlans({ aircraftId, draft, onTakeUp, onStart, when }: KeptPlansProps) {
  const { data } = useQuery(PlansQuery, {
    variables: { aircraftId },
    fetchPolicy: 'network-only',
    nextFetchPolicy: 'cache-first',
  });
  const [naming, setNaming] = useState(false);
  const plans = (data?.jobs ?? []).filter(({ state }) => state === 'OPEN');
  if (plans.length === 0 && draft.steps.length === 0) return null;
  return (
    <details className="tw-sheet tw-no-print" open={naming || undefined}>
      <summary>Plans kept with this aircraft ({plans.length})</summary>
      <div className="tw-stack">
        <ul className="tw-owed">
          {plans.map((plan) => (
            <PlanRow key={plan.id} {...{ plan, aircraftId, onTakeUp, onStart, when }} />
          ))}
        </ul>
        {draft.steps.length > 0 && <KeepForm aircraftId={aircraftId} draft={draft} onNaming={setNaming} />}
      </div>
    </details>
  );
}

function PlanRow({
  plan,
  aircraftId,
  onTakeUp,
  onStart,
  when,
}: { plan: KeptPlan; aircraftId: string } & Pick<KeptPlansProps, 'onTakeUp' | 'onStart' | 'when'>) {
  const [discard, { loading }] = useMutation(DiscardPlanMutation, {
    refetchQueries: [{ query: PlansQuery, variables: { aircraftId } }],
  });
  const steps = plan.draftSchema === dossierSchemaVersion ? stepsOf(plan.draft) : null;
  return (
    <li>
      <span>
        {plan.title}{' '}
        <span className="tw-soft tw-small">
          planned by {plan.createdBy}, kept {when(plan.updatedAt)}
        </span>
      </span>
      <span className="tw-row">
        {steps ? (
          <Button onClick={() => onTakeUp(steps)}>Take it up</Button>
        ) : (
          <span className="tw-soft">made with another form of this screen</span>
        )}
        <StartWork job={plan} steps={steps} onStart={onStart} />
        <Button look="quiet" busy={loading} onClick={() => void discard({ variables: { id: plan.id } })}>
          Discard
        </Button>
      </span>
    </li>
  );
}

function stepsOf(text: string): readonly Step[] | null {
  try {
    const steps: unknown = JSON.parse(text);
    return Array.isArray(steps) ? (steps as Step[]) : null;
  } catch {
    return null;
  }
}

function KeepForm({
  aircraftId,
  draft,
  onNaming,
}: {
  aircraftId: string;
  draft: Draft;
  onNaming: (naming: boolean) => void;
}) {
  const say = useToast();
  const [title, setTitle] = useState('');
  const [problem, setProblem] = useState<Problem | null>(null);
  const [create, creating] = useMutation(CreatePlanMutation);
  const [save, saving] = useMutation(SavePlanMutation, {
    refetchQueries: [{ query: PlansQuery, variables: { aircraftId } }],
  });
  async function keep() {
    setProblem(null);
    try {
      const { data } = await create({ variables: { input: { aircraftId, title: title.trim() } } });
      if (!data) return;
      const input = {
        jobId: data.createJob.id,
        revision: draft.revision,
        draftSchema: dossierSchemaVersion,
        draft: JSON.stringify(draft.steps),
      };
      await save({ variables: { input } });
      setTitle('');
      say('The plan is kept with the aircraft.');
    } catch (error) {
      setProblem(problemOf(error));
    }
  }
  return (
    <form
      className="tw-row"
      onSubmit={(event) => {
        event.preventDefault();
        if (title.trim() !== '') void keep();
      }}
    >
      <Field label="Keep this plan as" error={problem ? `${problem.title} ${problem.wayOut ?? ''}` : null}>
        <input
          value={title}
          onFocus={() => onNaming(true)}
          onChange={(event) => setTitle(event.target.value)}
          maxLength={200}
        />
      </Field>
      <Button type="submit" busy={creating.loading || saving.loading} disabled={title.trim() === ''}>
        Keep it with the aircraft
      </Button>
    </form>
  );
}
