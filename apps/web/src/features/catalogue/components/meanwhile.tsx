import { whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import type { EquipmentType } from '@tallywing/rules';
import { still } from '../../../app/live/refresh.js';
import { problemOf } from '../../../app/problem.js';
import { useHouse, zoneOf } from '../../../app/house.js';
import { Button } from '../../../ui/button.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { listWords } from '../../../ui/words.js';
import { labelOf } from '../../../form/labels.js';
import { entryOf, type Entry } from '../entry.js';
import { labelAt } from '../field-words.js';
import { mergedOn } from '../merge.js';
import { EntryQuery, type EntryToEdit } from '../query.js';
import { documentWords } from './versions.js';

export interface MeanwhileProps {
  /** The version that the draft was begun on. */
  readonly begunOn: string;
  readonly inForce: EntryToEdit;
  readonly mine: Entry;
  readonly onGoOn: (entry: Entry) => void;
}

/** Somebody else revised the entry: who, what, and what becomes of the draft. Nothing of it is lost. */
export function Meanwhile({ begunOn, inForce, mine, onGoOn }: MeanwhileProps) {
  const zone = zoneOf(useHouse(), '');
  const { data, error, refetch } = useQuery(EntryQuery, {
    variables: { id: begunOn },
    fetchPolicy: 'cache-first',
    ...still,
  });
  const version = inForce.versions.find(({ id }) => id === inForce.id);
  const base = data?.equipmentType?.body as EquipmentType | undefined;
  const theirs = entryOf(inForce.body as EquipmentType);
  // Without the version it was begun on nobody can tell what was untouched: all of the draft stays.
  const merged = data ? (base ? mergedOn(entryOf(base), mine, theirs) : { entry: mine, taken: [], kept: [] }) : null;
  const problem = error && !data ? problemOf(error) : null;
  const names = (fields: readonly string[]) => listWords(fields.map((each) => inForceWords(mine, theirs, each)));
  return (
    <section className="tw-state" data-kind="trouble" role="alert">
      <p className="tw-state-title">The entry was revised meanwhile. Nothing of yours is lost.</p>
      {version && (
        <p>
          {version.enteredBy ?? 'Somebody'} put {documentWords(version)} in force, {whenWords(version.enteredAt, zone)}.
        </p>
      )}
      {merged ? (
        <>
          {merged.taken.length > 0 && <p>Your draft takes over what you had not touched: {names(merged.taken)}.</p>}
          {merged.kept.length > 0 && (
            <p>You both changed this, and yours stays: {names(merged.kept)}. Compare it with the manual.</p>
          )}
          <Button onClick={() => onGoOn(merged.entry)}>I have seen it: go on with my draft</Button>
        </>
      ) : problem ? (
        <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />
      ) : (
        <Loading what="what changed" />
      )}
    </section>
  );
}

/** A field by its label, with what now stands there in the version in force where that is one word or number. */
function inForceWords(mine: Entry, theirs: Entry, field: string): string {
  const label = labelAt(mine, field) ?? labelOf(field);
  const value = theirs[field];
  return typeof value === 'string' || typeof value === 'number' ? `${label} (now ${value})` : label;
}
