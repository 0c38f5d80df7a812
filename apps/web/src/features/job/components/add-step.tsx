import { changeDefinitions } from '@tallywing/rules';
import { Button } from '../../../ui/button.js';
import { formOf, groupsOf } from '../kinds.js';

const offered = groupsOf(changeDefinitions.map((definition) => definition.kind));
const usual = [
  'unit.remove',
  'unit.install',
  'link.connect',
  'record.add',
  'database.load',
  'meter.read',
  'defect.raise',
  'defect.close',
];

/** What is recorded most stands at the top; the closed list as a whole is folded below, by bench. */
export function AddStep({ onAdd }: { onAdd: (kind: string) => void }) {
  return (
    <div className="tw-stack">
      <ul className="tw-add" aria-label="Recorded most">
        {usual.map((kind) => (
          <li key={kind}>
            <Button onClick={() => onAdd(kind)}>{formOf(kind).title}</Button>
          </li>
        ))}
      </ul>
      <details>
        <summary className="tw-fold">Everything that can be recorded</summary>
        <div className="tw-add tw-add-all">
          {offered.map((group) => (
            <section key={group.title} aria-label={group.title}>
              <h3>{group.title}</h3>
              <ul>
                {group.kinds
                  // An aircraft on record is not added again.
                  .filter((form) => form.kind !== 'aircraft.add')
                  .map((form) => (
                    <li key={form.kind}>
                      <Button look="quiet" onClick={() => onAdd(form.kind)}>
                        {form.title}
                      </Button>
                    </li>
                  ))}
              </ul>
            </section>
          ))}
        </div>
      </details>
    </div>
  );
}
