import { useQuery } from '@apollo/client/react';
import { civilDateAt } from '@tallywing/rules';
import { useHouse, zoneOf } from '../../app/house.js';
import { still } from '../../app/live/refresh.js';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { useParamsState } from '../../app/use-params-state.js';
import { clockNow } from '../../trade/time.js';
import { Caution } from '../../ui/caution.js';
import { Loading, Trouble } from '../../ui/states.js';
import { Agencies } from './components/agencies.js';
import { TestSets } from './components/test-sets.js';
import { TraceView } from './components/trace-view.js';
import { WorkshopQuery } from './query.js';

/** What entries name: test sets with their calibration, and agencies; and back from a test set to the entries. */
export function WorkshopScreen() {
  const { viewer } = useSession();
  const today = civilDateAt(clockNow(), zoneOf(useHouse(), ''));
  const [shown, show] = useParamsState(['set', 'agency', 'trace']);
  const { data, error, refetch } = useQuery(WorkshopQuery, still);
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the test sets" />;
  const mayWrite = viewer.may.includes('workshop.write');
  const reload = () => refetch();
  return (
    <div className="tw-stack-wide">
      <h1>Test sets and agencies</h1>
      {shown.trace !== '' && (
        <TraceView key={shown.trace} calibrationId={shown.trace} onClose={() => show({ trace: '' })} />
      )}
      <TestSets
        {...{ today, mayWrite, reload }}
        testSets={data.testSets}
        open={shown.set}
        onOpen={(set) => show({ set, agency: '' })}
        onTrace={(trace) => show({ trace })}
      />
      <Agencies
        {...{ today, mayWrite, reload }}
        agencies={data.agencies}
        open={shown.agency}
        onOpen={(agency) => show({ agency, set: '' })}
      />
      <Caution />
    </div>
  );
}
