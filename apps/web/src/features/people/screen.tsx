import { idWords } from '@tallywing/rules';
import { useMutation, useQuery } from '@apollo/client/react';
import { useHouse, zoneOf } from '../../app/house.js';
import { still } from '../../app/live/refresh.js';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { useParamsState } from '../../app/use-params-state.js';
import { certificateWords } from '../../trade/certificates.js';
import { Button } from '../../ui/button.js';
import { Sheet } from '../../ui/sheet.js';
import { Loading, Trouble } from '../../ui/states.js';
import { StatusMark } from '../../ui/status-mark.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords } from '../../ui/words.js';
import { PersonForm } from './components/person-form.js';
import { PersonSheet } from './components/person-sheet.js';
import { AddPersonMutation, EverySessionQuery, PeopleQuery, type Person, type Session } from './query.js';

const NEW = 'new';

/** Who belongs to the house, what they may do and what they may sign. */
export function PeopleScreen() {
  const { viewer } = useSession();
  const mayWrite = viewer.may.includes('people.write');
  const zone = zoneOf(useHouse(), '');
  const [shown, show] = useParamsState(['person']);
  const { data, error, refetch } = useQuery(PeopleQuery, still);
  const everywhere = useQuery(EverySessionQuery, { skip: !mayWrite, fetchPolicy: 'network-only' });
  const [add] = useMutation(AddPersonMutation);
  const close = () => show({ person: '' });
  const reload = () => Promise.all([refetch(), everywhere.refetch()]);
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the people" />;
  const sessions = everywhere.data?.sessions ?? [];
  const chosen = mayWrite ? data.people.find(({ id }) => id === shown.person) : undefined;
  return (
    <div className="tw-stack">
      <h1>People</h1>
      <p className="tw-soft">
        {countWords(data.people.length, 'person', 'people')}. What a certificate says here is offered when work is
        recorded; each entry keeps its own copy.
      </p>
      {mayWrite && shown.person !== NEW && (
        <div className="tw-row tw-no-print">
          <Button look="main" onClick={() => show({ person: NEW })}>
            Add a person
          </Button>
        </div>
      )}
      {mayWrite && shown.person === NEW && (
        <Sheet title="Add a person" onClose={close}>
          <PersonForm
            person={null}
            send={async (facts, { email, password }) => {
              await add({ variables: { input: { ...facts, email, password } } });
              await reload();
            }}
            onDone={close}
          />
        </Sheet>
      )}
      {chosen && (
        <PersonSheet
          person={chosen}
          sessions={sessions.filter(({ person }) => person.id === chosen.id)}
          zone={zone}
          reload={reload}
          onClose={close}
        />
      )}
      <DataTable
        caption="People"
        captionHidden
        columns={columnsFor(mayWrite ? sessions : null, (id) => show({ person: id }))}
        rows={data.people}
        rowKey={({ id }) => id}
        empty="Nobody yet."
      />
    </div>
  );
}

/** Without sessions for whoever may only read. */
function columnsFor(sessions: readonly Session[] | null, onOpen: (id: string) => void): readonly Column<Person>[] {
  const columns: readonly Column<Person>[] = [
    {
      key: 'name',
      head: 'Name',
      rowHead: true,
      sort: ({ name }) => name,
      cell: ({ name, email }) => (
        <>
          <strong>{name}</strong>
          <br />
          <span className="tw-soft tw-small">{email}</span>
        </>
      ),
    },
    {
      key: 'role',
      head: 'Role',
      sort: ({ role }) => role,
      cell: ({ role, operator }) => (operator ? `${idWords(role)} for ${operator.name}` : idWords(role)),
    },
    {
      key: 'certificate',
      head: 'Certificate',
      cell: ({ certificate }) =>
        certificate ? certificateWords(certificate) : <span className="tw-soft">none recorded</span>,
    },
    {
      key: 'active',
      head: 'May sign in',
      sort: ({ active }) => (active ? 0 : 1),
      cell: ({ active }) => <StatusMark status={active ? 'yes' : 'not-judged'} word={active ? 'Yes' : 'Deactivated'} />,
    },
  ];
  if (sessions === null) return columns;
  return [
    ...columns,
    {
      key: 'sessions',
      head: 'Signed in',
      cell: ({ id }) => countWords(sessions.filter(({ person }) => person.id === id).length, 'session'),
    },
    {
      key: 'change',
      head: 'Change',
      cell: ({ id, name }) => (
        <Button look="quiet" aria-label={`Change ${name}`} onClick={() => onOpen(id)}>
          Change
        </Button>
      ),
    },
  ];
}
