import { describe, expect, it } from 'vitest';
import { deferralOf, mechanic } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Aircraft } from '../dossier/aircraft.js';
import type { Agency, Rating } from '../dossier/common.js';
import type { Deferral } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { deferred } from './deferral.js';
import { timelessOutcome } from './entry-outcome.js';
import { missingPaths } from './gaps.js';

const small: Partial<Aircraft> = { kind: 'airplane', engine: 'reciprocating', maxWeightLb: 2300 };
const clauseOf = (part: Partial<Deferral>, aircraft: Partial<Aircraft> = small) =>
  deferred(factsOf(dossierOf({ configuration: { aircraft } }), catalogueOf()), {
    id: 'd1',
    kind: 'inoperative-item',
    subject: 'clock',
    text: 'Stopped.',
    raised: { date: '2026-01-10', at: null },
    decidedBy: mechanic,
    deferral: deferralOf({ on: '2026-01-15', ...part }),
  });
const by = (kind: Agency['kind'], ratings: readonly Rating[] | null) =>
  timelessOutcome(clauseOf({ noHazardBy: { kind, name: 'Somebody', certificate: 'X-0009', ratings } }));

// 91.213(d)(4): a pilot certificated and rated, or a person certificated and rated to maintain aircraft.
it.each<[Agency['kind'], readonly Rating[] | null, string]>([
  ['pilot', ['private-pilot'], 'met'],
  ['pilot', ['sport-pilot'], 'met'],
  ['pilot', [], 'not-met'],
  ['pilot', null, 'cannot-tell'],
  ['mechanic', ['airframe'], 'met'],
  ['mechanic', ['powerplant'], 'met'],
  ['mechanic', ['inspection-authorization'], 'met'],
  ['mechanic', [], 'not-met'],
  ['mechanic', ['private-pilot'], 'not-met'],
  ['repairman', ['light-sport-maintenance'], 'met'],
  ['repairman', ['airframe'], 'not-met'],
  ['repair-station', ['radio-1'], 'met'],
  ['repair-station', [], 'not-met'],
  ['repair-station', null, 'cannot-tell'],
  ['manufacturer', null, 'met'],
  ['carrier', null, 'met'],
])('no hazard found by a %s with %j: %s', (kind, ratings, outcome) => {
  expect(by(kind, ratings)).toBe(outcome);
});

// 91.213(d)(1): rotorcraft, non-turbine airplanes, gliders, lighter-than-air, small or without a master list.
it.each<[string, Partial<Aircraft>, string]>([
  ['an airplane of 12,500 lb', { ...small, maxWeightLb: 12_500 }, 'met'],
  ['an airplane of 12,501 lb', { ...small, maxWeightLb: 12_501 }, 'cannot-tell'],
  ['an airplane of unrecorded weight', { ...small, maxWeightLb: null }, 'cannot-tell'],
  ['an electric airplane', { ...small, engine: 'electric' }, 'met'],
  ['a turboprop', { ...small, engine: 'turboprop' }, 'not-met'],
  ['a turbojet', { ...small, engine: 'turbojet' }, 'not-met'],
  ['a turboshaft airplane', { ...small, engine: 'turboshaft' }, 'not-met'],
  ['an airplane of unrecorded engine', { ...small, engine: null }, 'cannot-tell'],
  ['a turbine helicopter', { kind: 'helicopter', engine: 'turboshaft', maxWeightLb: 3000 }, 'met'],
  ['a heavy helicopter', { kind: 'helicopter', engine: 'turboshaft', maxWeightLb: 13_000 }, 'cannot-tell'],
  ['a glider of unrecorded weight', { kind: 'glider', engine: 'none', maxWeightLb: null }, 'met'],
  ['a balloon of unrecorded weight', { kind: 'balloon', engine: 'none', maxWeightLb: null }, 'met'],
  ['an aircraft of another kind', { kind: 'other', engine: 'none', maxWeightLb: 500 }, 'cannot-tell'],
])('%s: %s', (_, aircraft, outcome) => {
  expect(timelessOutcome(clauseOf({}, aircraft))).toBe(outcome);
});

describe('each part of 91.213(d) by itself', () => {
  it.each(['notRequired', 'secured', 'placarded', 'recorded'] as const)('%s', (part) => {
    expect(timelessOutcome(clauseOf({ [part]: false }))).toBe('not-met');
    expect(timelessOutcome(clauseOf({ [part]: null }))).toBe('cannot-tell');
    expect(missingPaths(clauseOf({ [part]: null }))).toEqual([`status.defects.d1.deferral.${part}`]);
  });
});

describe('each part of a deferral by a minimum equipment list', () => {
  const list = { route: 'mel', letterAboard: true, notRequired: null, noHazardBy: null } as const;
  it('asks for no finding of its own', () => {
    expect(timelessOutcome(clauseOf(list))).toBe('met');
  });
  it.each(['letterAboard', 'secured', 'placarded', 'recorded'] as const)('%s', (part) => {
    expect(timelessOutcome(clauseOf({ ...list, [part]: false }))).toBe('not-met');
    expect(missingPaths(clauseOf({ ...list, [part]: null }))).toEqual([`status.defects.d1.deferral.${part}`]);
  });
});
