import { useSearchParams } from 'react-router';
import { Button } from '../../../ui/button.js';
import { formOf, type Start } from '../kinds.js';
import type { Step } from '../plan.js';
import { stepAbout } from '../follow.js';

/** What another screen asked for by its link: a kind of change, and what it is about. Gone once it is planned. */
export function RecordOffer({ start, onAdd }: { start: Start; onAdd: (step: Step) => void }) {
  const [params, setParams] = useSearchParams();
  const kind = params.get('record');
  const step = kind === null ? null : stepAbout(kind, params.get('about') ?? '', start);
  if (kind === null || !step) return null;
  return (
    <section className="tw-sheet tw-stack" aria-label="From what is missing">
      <p>
        What is missing is recorded with <strong>{formOf(kind).title}</strong>. Its effect on every answer stands beside
        it before it is recorded.
      </p>
      <Button
        onClick={() => {
          onAdd(step);
          setParams({}, { replace: true });
        }}
      >
        Put it on the plan
      </Button>
    </section>
  );
}
