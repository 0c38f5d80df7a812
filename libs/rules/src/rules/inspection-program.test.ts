import { expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Aircraft } from '../dossier/aircraft.js';
import { factsOf } from '../graph/facts.js';
import { timelessOutcome } from './entry-outcome.js';
import { boundWithoutProgram, maySelect, mustSelect } from './inspection-program.js';

const facts = (aircraft: Partial<Aircraft>) =>
  factsOf(dossierOf({ configuration: { aircraft: { certificate: 'standard', ...aircraft } } }), catalogueOf());
const jet = { engine: 'turbojet', engineCount: 1, maxWeightLb: 12_500 } as const;

// 91.409(e): large airplanes, turbojet multiengine airplanes, turbopropeller multiengine airplanes.
it.each<[string, Partial<Aircraft>, string]>([
  ['an airplane of 12,501 lb', { maxWeightLb: 12_501, engine: 'reciprocating', engineCount: 1 }, 'met'],
  [
    'one of 12,500 lb with two piston engines',
    { maxWeightLb: 12_500, engine: 'reciprocating', engineCount: 2 },
    'not-met',
  ],
  ['a jet with one engine', jet, 'not-met'],
  ['a jet with two', { ...jet, engineCount: 2 }, 'met'],
  ['a jet with engines not counted', { ...jet, engineCount: null }, 'cannot-tell'],
  ['a turboprop with two', { ...jet, engine: 'turboprop', engineCount: 2 }, 'met'],
  ['an experimental jet with two', { ...jet, engineCount: 2, certificate: 'experimental' }, 'not-met'],
  [
    'a light-sport airplane whose weight nobody recorded',
    { certificate: 'light-sport', engineCount: 2, engine: 'reciprocating', maxWeightLb: null },
    'not-met',
  ],
  [
    'one with two piston engines, weight not recorded',
    { engine: 'reciprocating', engineCount: 2, maxWeightLb: null },
    'cannot-tell',
  ],
  [
    'one with a piston engine, weight not recorded',
    { engine: 'reciprocating', engineCount: 1, maxWeightLb: null },
    'not-met',
  ],
  [
    'one with piston engines not counted, weight not recorded',
    { engine: 'reciprocating', engineCount: null, maxWeightLb: null },
    'not-met',
  ],
  ['engine not recorded', { engine: null, maxWeightLb: 2300 }, 'cannot-tell'],
])('must select a program: %s: %s', (_, aircraft, outcome) => {
  expect(timelessOutcome(mustSelect(facts(aircraft)))).toBe(outcome);
});

it.each<[string, Partial<Aircraft>, string]>([
  ['a turbine helicopter', { kind: 'helicopter', engine: 'turboshaft' }, 'met'],
  ['a piston helicopter', { kind: 'helicopter', engine: 'reciprocating' }, 'not-met'],
  ['a helicopter of unrecorded engine', { kind: 'helicopter', engine: null }, 'cannot-tell'],
])('may select one: %s: %s', (_, aircraft, outcome) => {
  expect(timelessOutcome(maySelect(facts(aircraft)))).toBe(outcome);
});

// 91.409(c): a progressive or approved program excuses; an annual one is what is asked anyway.
it.each([
  [null, 'met'],
  ['annual', 'met'],
  ['progressive', 'not-met'],
  ['approved-program', 'not-met'],
  ['selected-program', 'met'],
] as const)('a small airplane that follows %s: the annual inspection binds: %s', (kind, outcome) => {
  const program = kind === null ? null : { kind, document: null };
  const small = facts({ engine: 'reciprocating', engineCount: 1, maxWeightLb: 2300, program });
  expect(timelessOutcome(boundWithoutProgram(small, 'bound'))).toBe(outcome);
});
