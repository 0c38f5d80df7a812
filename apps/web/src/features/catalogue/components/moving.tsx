import { useLazyQuery } from '@apollo/client/react';
import { problemOf } from '../../../app/problem.js';
import { Button } from '../../../ui/button.js';
import { Trouble } from '../../../ui/states.js';
import { MovingQuery } from '../query.js';
import { MoveEffectView } from './move-effect.js';

/** Units that are still recorded with an older version: what moving them would do, asked for because it takes a while. */
export function Moving({ typeId }: { typeId: string }) {
  const [ask, { data, loading, error }] = useLazyQuery(MovingQuery, { fetchPolicy: 'network-only' });
  const problem = error && !loading ? problemOf(error) : null;
  const look = () => void ask({ variables: { typeId } });
  return (
    <section className="tw-sheet tw-stack" aria-labelledby="moving-title">
      <h2 id="moving-title">Aircraft under an older version</h2>
      <p>
        They are judged by the version that their unit was recorded with. To change that, plan on each aircraft to
        complete what is known of the unit; the old entries of its record stay as they are.
      </p>
      {problem && <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={look} />}
      {data && <MoveEffectView effect={data.movingTo} savedAs={typeId} />}
      <div>
        <Button busy={loading} onClick={look}>
          {loading ? 'Judging…' : data ? 'Judge again' : 'Show what moving them would do'}
        </Button>
      </div>
    </section>
  );
}
