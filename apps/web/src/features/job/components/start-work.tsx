import { useApolloClient, useMutation } from '@apollo/client/react';
import { problemOf } from '../../../app/problem.js';
import { useRequestKey } from '../../../app/use-request-key.js';
import { Button } from '../../../ui/button.js';
import { useToast } from '../../../ui/toast.js';
import type { Step } from '../plan.js';
import { StartJobMutation, type KeptPlan } from '../query.js';

export interface StartWorkProps {
  readonly job: Pick<KeptPlan, 'id' | 'title' | 'state'>;
  /** What is planned; it is taken up with the work. */
  readonly steps: readonly Step[] | null;
  readonly onTakeUp: (steps: readonly Step[]) => void;
}

/** Puts the aircraft in work: from then on nobody sends it until the work is released. */
export function StartWork({ job, steps, onTakeUp }: StartWorkProps) {
  const say = useToast();
  const client = useApolloClient();
  const key = useRequestKey([job.id, job.state]);
  const [start, { loading }] = useMutation(StartJobMutation);
  async function begin() {
    try {
      await start({ variables: { input: { jobId: job.id, key } } });
      if (steps !== null && steps.length > 0) onTakeUp(steps);
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
