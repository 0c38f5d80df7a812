import { Link } from 'react-router';
import { Empty } from '../ui/states.js';
import { useSession } from './session.js';

/** A house without aircraft: where they come from, or who brings them. */
export function NoAircraftYet() {
  const { viewer } = useSession();
  return (
    <Empty title="There is no aircraft here yet.">
      {viewer.may.includes('import.check') ? (
        <Link to="/import">Import a fleet</Link>
      ) : (
        <p>A manager loads aircraft from files on the Import screen.</p>
      )}
    </Empty>
  );
}
