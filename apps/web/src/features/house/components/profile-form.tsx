import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Checks } from '../../../ui/checks.js';
import { Field } from '../../../ui/field.js';
import {
  airspaceOptions,
  approachOptions,
  draftOf,
  errandOptions,
  inputOf,
  numberProblem,
  purposeOptions,
  type ProfileDraft,
} from '../profile-draft.js';
import { AddFlightProfileMutation, AmendFlightProfileMutation, type Profile } from '../query.js';

const shown = ['name', 'conditions.topFt', 'conditions.localTrainingNm', 'conditions.region', 'conditions.approaches'];

export interface ProfileFormProps {
  readonly profile: Profile | null;
  readonly reload: () => Promise<unknown>;
  readonly onDone: () => void;
}

/** The conditions of one flight, in the words of the rules. */
export function ProfileForm({ profile, reload, onDone }: ProfileFormProps) {
  const [draft, setDraft] = useState(() => draftOf(profile));
  const [tried, setTried] = useState(false);
  const { run, busy, problem, at } = useAct();
  const [add] = useMutation(AddFlightProfileMutation);
  const [amend] = useMutation(AmendFlightProfileMutation);
  const set = (next: Partial<ProfileDraft>) => setDraft({ ...draft, ...next });
  const input = inputOf(draft);
  const wrong = (field: 'topFt' | 'localTrainingNm') =>
    (tried ? numberProblem(draft, field) : null) ?? at(`conditions.${field}`);
  async function send() {
    if (input === null) return;
    if (profile === null) await add({ variables: { input } });
    else {
      const seen = { profileId: profile.id, expectedRevision: profile.revision };
      await amend({ variables: { input: { ...seen, ...input } } });
    }
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (input === null) return;
        void run(send, `The flight profile ${input.name} is saved.`).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <div className="tw-fields">
        <Field label="Name of the flight" error={at('name')}>
          <input value={draft.name} maxLength={200} onChange={(event) => set({ name: event.target.value })} />
        </Field>
        <Pick
          label="Flight rules"
          value={draft.rules}
          options={[
            { id: 'vfr', name: 'VFR' },
            { id: 'ifr', name: 'IFR' },
          ]}
          onPick={(rules) => set({ rules })}
        />
        <Pick
          label="Light"
          value={draft.light}
          options={[
            { id: 'day', name: 'By day' },
            { id: 'night', name: 'By night' },
          ]}
          onPick={(light) => set({ light })}
        />
        <Pick label="Purpose" value={draft.purpose} options={purposeOptions} onPick={(purpose) => set({ purpose })} />
        <Pick
          label="Errand, where the rule of emergency transmitters excepts it"
          value={draft.errand}
          options={errandOptions}
          onPick={(errand) => set({ errand })}
        />
        <Field label="Highest altitude" aside="ft" error={wrong('topFt')}>
          <input inputMode="numeric" value={draft.topFt} onChange={(event) => set({ topFt: event.target.value })} />
        </Field>
        <Field label="Local training within" aside="NM" optional error={wrong('localTrainingNm')}>
          <input
            inputMode="numeric"
            value={draft.localTrainingNm}
            onChange={(event) => set({ localTrainingNm: event.target.value })}
          />
        </Field>
        <Field label="Region that the navigation data must cover" optional error={at('conditions.region')}>
          <input value={draft.region} maxLength={200} onChange={(event) => set({ region: event.target.value })} />
        </Field>
      </div>
      <Checks
        legend="Airspace"
        options={airspaceOptions}
        ticked={draft.airspace}
        onTick={(airspace) => set({ airspace: airspace ?? [] })}
      />
      <Checks
        legend="Approaches, of which one must be flyable"
        options={approachOptions}
        ticked={draft.approaches}
        onTick={(approaches) => set({ approaches: approaches ?? [] })}
        error={at('conditions.approaches')}
      />
      <div>
        <Tick
          label="Over water beyond gliding distance"
          on={draft.overWaterBeyondGlide}
          onTurn={(overWaterBeyondGlide) => set({ overWaterBeyondGlide })}
        />
        <Tick label="Crew only" on={draft.crewOnly} onTurn={(crewOnly) => set({ crewOnly })} />
        <Tick label="Wanted on the board" on={draft.wanted} onTurn={(wanted) => set({ wanted })} />
      </div>
      <ProblemNote problem={problem} fields={shown} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Save the flight profile
        </Button>
      </div>
    </form>
  );
}

interface PickProps<Id extends string> {
  readonly label: string;
  readonly value: Id;
  readonly options: readonly { readonly id: Id; readonly name: string }[];
  readonly onPick: (id: Id) => void;
}

function Pick<Id extends string>({ label, value, options, onPick }: PickProps<Id>) {
  return (
    <Field label={label}>
      <select value={value} onChange={(event) => onPick(event.target.value as Id)}>
        {options.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </Field>
  );
}

function Tick({ label, on, onTurn }: { label: string; on: boolean; onTurn: (on: boolean) => void }) {
  return (
    <label className="tw-check">
      <input type="checkbox" checked={on} onChange={(event) => onTurn(event.target.checked)} />
      {label}
    </label>
  );
}
