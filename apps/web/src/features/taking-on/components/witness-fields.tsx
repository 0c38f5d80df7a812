import { useQuery } from '@apollo/client/react';
import { WorkChoicesQuery } from '../../../app/house-choices.js';
import { Field } from '../../../ui/field.js';
import type { Witness } from '../found.js';

/** Who states it, under which certificate, and on which day. Nothing is filled in for anybody. */
export function WitnessFields({
  witness,
  onChange,
  today,
}: {
  witness: Witness;
  onChange: (witness: Witness) => void;
  today: string;
}) {
  const { data } = useQuery(WorkChoicesQuery);
  const people = (data?.workChoices.agencies ?? []).filter(({ certificate }) => certificate !== null);
  return (
    <div className="tw-taking-on-witness">
      {people.length > 0 && (
        <Field label="Fill in from the house’s list">
          <select
            value=""
            onChange={(event) => {
              const picked = people[Number(event.target.value)];
              if (picked) onChange({ ...witness, name: picked.name, certificate: picked.certificate ?? '' });
            }}
          >
            <option value="">choose…</option>
            {people.map(({ name, certificate }, index) => (
              <option key={`${name} ${certificate}`} value={index}>
                {name}, {certificate}
              </option>
            ))}
          </select>
        </Field>
      )}
      <Field label="Name">
        <input value={witness.name} onChange={(event) => onChange({ ...witness, name: event.target.value })} />
      </Field>
      <Field label="Certificate number">
        <input
          value={witness.certificate}
          onChange={(event) => onChange({ ...witness, certificate: event.target.value })}
        />
      </Field>
      <Field label="Day">
        <input
          type="date"
          max={today}
          value={witness.date}
          onChange={(event) => onChange({ ...witness, date: event.target.value })}
        />
      </Field>
    </div>
  );
}
