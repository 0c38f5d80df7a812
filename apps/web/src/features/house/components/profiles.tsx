import { useMutation } from '@apollo/client/react';
import type { FlightConditions } from '@tallywing/rules';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Sheet } from '../../../ui/sheet.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { flightWords, moved } from '../profile-draft.js';
import { OrderFlightProfilesMutation, type Profile } from '../query.js';
import { ProfileForm } from './profile-form.js';

export interface ProfilesProps {
  readonly profiles: readonly Profile[];
  readonly mayWrite: boolean;
  readonly reload: () => Promise<unknown>;
}

/** The flights that the board asks about, in its order. */
export function Profiles({ profiles, mayWrite, reload }: ProfilesProps) {
  const [open, setOpen] = useState<string | null>(null);
  const { run, busy, problem } = useAct();
  const [order] = useMutation(OrderFlightProfilesMutation);
  const close = () => setOpen(null);
  const ids = profiles.map(({ id }) => id);
  const move = (profile: Profile, by: -1 | 1) =>
    void run(
      async () => {
        await order({ variables: { ids: [...moved(ids, profile.id, by)] } });
        await reload();
      },
      `${profile.name} is moved ${by < 0 ? 'up' : 'down'}.`,
    );
  const chosen = profiles.find(({ id }) => id === open);
  return (
    <section className="tw-stack" aria-labelledby="profiles">
      <h2 id="profiles">Flight profiles</h2>
      <p className="tw-soft">
        The columns of the board. Changed conditions have every aircraft judged again, which takes a moment; until then
        the board says so and its yes is not a yes.
      </p>
      <ProblemNote problem={problem} onReload={reload} />
      <DataTable
        caption="Flight profiles"
        captionHidden
        columns={columnsFor(mayWrite ? { ids, busy, move, onOpen: setOpen } : null)}
        rows={profiles}
        rowKey={({ id }) => id}
        empty="No flight profile yet: the board has nothing to ask."
      />
      {(open === 'new' || chosen) && (
        <Sheet title={chosen ? `Change ${chosen.name}` : 'Add a flight profile'} onClose={close}>
          <ProfileForm
            key={chosen ? `${chosen.id} ${chosen.revision}` : 'new'}
            profile={chosen ?? null}
            reload={reload}
            onDone={close}
          />
        </Sheet>
      )}
      {mayWrite && open === null && (
        <div className="tw-row tw-no-print">
          <Button onClick={() => setOpen('new')}>Add a flight profile</Button>
        </div>
      )}
    </section>
  );
}

interface Doings {
  readonly ids: readonly string[];
  readonly busy: boolean;
  readonly move: (profile: Profile, by: -1 | 1) => void;
  readonly onOpen: (id: string) => void;
}

function columnsFor(doings: Doings | null): readonly Column<Profile>[] {
  const columns: readonly Column<Profile>[] = [
    { key: 'name', head: 'Flight', rowHead: true, cell: ({ name }) => name },
    {
      key: 'conditions',
      head: 'Conditions',
      cell: ({ conditions }) => flightWords(conditions as FlightConditions),
    },
    {
      key: 'wanted',
      head: 'On the board',
      cell: ({ wanted }) => <StatusMark status={wanted ? 'yes' : 'not-wanted'} />,
    },
  ];
  if (doings === null) return columns;
  const { ids, busy, move, onOpen } = doings;
  return [
    ...columns,
    {
      key: 'order',
      head: 'Order',
      cell: (profile) => (
        <span className="tw-row tw-row-whole">
          {ids[0] !== profile.id && (
            <Button look="quiet" busy={busy} aria-label={`Move ${profile.name} up`} onClick={() => move(profile, -1)}>
              Up
            </Button>
          )}
          {ids.at(-1) !== profile.id && (
            <Button look="quiet" busy={busy} aria-label={`Move ${profile.name} down`} onClick={() => move(profile, 1)}>
              Down
            </Button>
          )}
        </span>
      ),
    },
    {
      key: 'change',
      head: 'Change',
      cell: (profile) => (
        <Button look="quiet" aria-label={`Change ${profile.name}`} onClick={() => onOpen(profile.id)}>
          Change
        </Button>
      ),
    },
  ];
}
