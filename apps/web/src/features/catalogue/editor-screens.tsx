import { useQuery } from '@apollo/client/react';
import type { EquipmentType } from '@tallywing/rules';
import { useMemo } from 'react';
import { Link, useParams } from 'react-router';
import { still } from '../../app/live/refresh.js';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { blankEntry, copyOf, entryOf } from './entry.js';
import { EntryEditor } from './entry-editor.js';
import { pathOf } from './paths.js';
import { EntryQuery, type EntryToEdit } from './query.js';
import { NoSuchType } from './type-screen.js';

const nothingToReload = () => Promise.resolve();

/** A product from its installation manual. */
export function EnterTypeScreen() {
  const start = useMemo(blankEntry, []);
  const mayWrite = useMayWrite();
  if (!mayWrite) return <OnlyReading />;
  return (
    <EntryEditor
      task="new"
      title="Enter a type"
      lead="Write what the installation manual says. Where it is silent, leave the field: the rules then answer that they cannot tell."
      start={start}
      inForce={null}
      back="/catalogue"
      onStale={nothingToReload}
    />
  );
}

/** Another product that begins as a copy. */
export function CopyTypeScreen() {
  const { id = '' } = useParams();
  const { type, state } = useEntry(id);
  const start = useMemo(() => (type ? copyOf(type.body as EquipmentType) : null), [type]);
  const mayWrite = useMayWrite();
  if (!mayWrite) return <OnlyReading />;
  if (!type || !start) return state;
  return (
    <EntryEditor
      key={type.id}
      task={`copy:${type.id}`}
      title={`Another product like ${type.maker} ${type.name}`}
      lead="Name the product and its manual. Documents named further down are still those of the product that was copied."
      start={start}
      inForce={null}
      back={pathOf(type.id)}
      onStale={nothingToReload}
    />
  );
}

/** The next version of a product, whichever of its versions the address names. */
export function ReviseTypeScreen() {
  const { id = '' } = useParams();
  const named = useEntry(id);
  const inForceId = named.type?.versions.find(({ current }) => current)?.id;
  const { type, state } = useEntry(inForceId ?? id);
  const start = useMemo(() => (type ? entryOf(type.body as EquipmentType) : null), [type]);
  const mayWrite = useMayWrite();
  if (!mayWrite) return <OnlyReading />;
  if (!named.type) return named.state;
  if (!type || !start) return state;
  return (
    <EntryEditor
      key={type.family}
      task={`revise:${type.family}`}
      title={`Revise ${type.maker} ${type.name}`}
      lead="Change what the manual says otherwise now. The version before stays for the aircraft whose units were recorded with it."
      start={start}
      inForce={type}
      back={pathOf(type.id)}
      onStale={named.reload}
    />
  );
}

function useMayWrite(): boolean {
  return useSession().viewer.may.includes('catalogue.write');
}

function OnlyReading() {
  return (
    <Empty title="Your role may read the catalogue, not write in it.">
      <p>Managers and technicians enter types. Ask one of them, or ask a manager to change your role.</p>
      <Link to="/catalogue">To the catalogue</Link>
    </Empty>
  );
}

/** One version as it is edited; what to show in its place while there is none. */
function useEntry(id: string) {
  const { data, error, refetch } = useQuery(EntryQuery, { variables: { id }, ...still });
  const type: EntryToEdit | null = data?.equipmentType ?? null;
  const problem = error && !data ? problemOf(error) : null;
  const state = problem ? (
    <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />
  ) : data ? (
    <NoSuchType />
  ) : (
    <Loading what="the entry" />
  );
  return { type, state, reload: () => refetch() };
}
