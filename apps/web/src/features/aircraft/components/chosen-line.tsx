import { useQuery } from '@apollo/client/react';
import { problemOf } from '../../../app/problem.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { lineOf } from '../line.js';
import { LineQuery, type AircraftAnswer } from '../query.js';
import { Line } from './line.js';

/** The twelve months ahead for the profile that was chosen. */
export function ChosenLine(props: { aircraft: AircraftAnswer; profileId: string; when: (instant: string) => string }) {
  const { aircraft, profileId, when } = props;
  const { data, previousData, error, refetch } = useQuery(LineQuery, {
    variables: { id: aircraft.id, profile: profileId },
    skip: profileId === '',
  });
  const profile = aircraft.verdicts.find((verdict) => verdict.profile.id === profileId)?.profile;
  if (!profile) return null;
  if (error) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  const line = (data ?? previousData)?.aircraft?.line;
  if (!line) return <Loading what="the months ahead" />;
  return <Line view={lineOf(line, when)} title={`The twelve months ahead: ${profile.name}`} when={when} />;
}
