import { changeDefinitions } from '@tallywing/rules';
import { Button } from '../../../ui/button.js';
import { groupsOf } from '../kinds.js';

const offered = groupsOf(changeDefinitions.map((definition) => definition.kind));

/** The closed list of what can be recorded, by the bench it belongs to. An aircraft on record is not added again. */
export function AddStep({ onAdd }: { onAdd: (kind: string) => void }) {
  return (
    <div className="tw-add">
      {offered.map((group) => (
        <section key={group.title} aria-label={group.title}>
          <h3>{group.title}</h3>
          <ul>
            {group.kinds
              .filter((form) => form.kind !== 'aircraft.add')
              .map((form) => (
                <li key={form.kind}>
                  <Button onClick={() => onAdd(form.kind)}>{form.title}</Button>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
