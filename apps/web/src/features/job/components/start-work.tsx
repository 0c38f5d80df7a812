import { useApolloClient, useMutation } from '@apollo/client/react';
import { problemOf } from '../../../app/problem.js';
import { useRequestKey } from '../../../app/use-request-key.js';
import { Button } from '../../../ui/button.js';
import { useToast } from '../../../ui/toast.js';
import type { Step } from '../plan.js';
import { StartJobMutation, type KeptPlan } from '../query.js';

/** Runs the start and puts the work on the bench. */
export type OnStart = (start: () => Promise<unknown>, steps: readonly Step[] | null) => Promise<void>;

export interface StartWorkProps {
  readonly job: Pick<KeptPlan, 'id' | 'title' | 'state'>;
  /** What is planned; it is taken up with the work. Null: the plan on the bench goes on. */
  readonly steps: readonly Step[] | null;
  readonly onStart: OnStart;
}

/** Puts the aircraft in work: from then on nobody sends it until the work is released. */
export function StartWork({ job, steps, onStart }: StartWorkProps) {
  const say = useToast();
  const client = useApolloClient();
  const key = useRequestKey([job.id, job.state]);
  const [start, { loading }] = useMutation(StartJobMutation);
  async function begin() {
    try {
      const send = () => start({ variables: { input: { jobId: job.id, key } } });
      await onStart(send, steps !== null && steps.length > 0 ? steps : null);
      say(`${job.title} is in work: the aircraft is held until its release.`);
      await client.refetchQueries({ include: 'active' });
    } catch (error) {
      const { title, wayOut } = problemOf(error);
      say(wayOut === undefined ? title : `${title} ${wayOut}`);
    }
  }
  return (
    <Button busy={loading} onClick={() => void begin()} aria-label={`Start work: ${job.title}`}>
      Start work
    </Button>
  );
}
