import fc from 'fast-check';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import type { System } from '../../libs/rules/src/assess/system.js';
import { systemFrom } from '../../libs/rules/src/assess/system.js';
import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import type { Facts } from '../../libs/rules/src/graph/facts.js';
import { factsOf } from '../../libs/rules/src/graph/facts.js';
import type { Means } from '../../libs/rules/src/graph/means.js';
import { instantOf, minutesOf } from '../../libs/rules/src/time/instant.js';
import type { Capability } from '../../libs/rules/src/verdict/capability.js';
import { aircraftCapabilities, meansCapabilities } from '../../libs/rules/src/verdict/capability.js';
import type { Clause, Leaf, Outcome } from '../../libs/rules/src/verdict/clause.js';
import type { FlightConditions, When } from '../../libs/rules/src/verdict/conditions.js';
import { airspaces, approaches, errands, purposes } from '../../libs/rules/src/verdict/conditions.js';
import type { Statement } from '../../libs/rules/src/verdict/result.js';

/** Random systems of statements over random clause trees, without any rule: the algebra alone. */
export const start = minutesOf('2026-03-01T00:00Z');
const span = 30 * 1440;

const outcome = fc.constantFrom<Outcome>('met', 'not-met', 'cannot-tell', 'not-applicable');
const instant = fc.integer({ min: -100, max: span + 100 }).map((minutes) => instantOf(start + minutes));
const limit = fc.integer({ min: 9_900, max: 11_500 });

const when: fc.Arbitrary<When> = fc.oneof(
  fc.constantFrom<When>({ rules: 'ifr' }, { light: 'night' }, { crewOnly: true }, { overWaterBeyondGlide: true }),
  fc.subarray([...purposes], { minLength: 1 }).map((purpose) => ({ purpose })),
  fc.subarray([...airspaces], { minLength: 1 }).map((airspace) => ({ airspace })),
  fc.integer({ min: 0, max: 20_000 }).map((topFt) => ({ topFt })),
  fc.subarray([...errands, 'unsaid' as const], { minLength: 1 }).map((errand) => ({ errand })),
  fc.constantFrom<When>({ region: ['Islands'] }, { regionSaid: true }),
);

const leaf: fc.Arbitrary<Leaf> = fc
  .record(
    {
      inside: outcome,
      outside: outcome,
      from: instant,
      before: instant,
      atMost: fc.oneof(
        fc.record({ tach: limit }),
        fc.record({ log: limit }),
        fc.record({ tach: limit, log: limit }),
        fc.record({ never: limit }),
      ),
      when,
    },
    { requiredKeys: ['inside', 'outside'] },
  )
  .map((part) => ({ is: 'leaf', label: 'leaf', ...part }) as Leaf);

export const clause: fc.Arbitrary<Clause> = fc.letrec<{ tree: Clause }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    leaf,
    fc.record({
      is: fc.constantFrom<'all' | 'any'>('all', 'any'),
      label: fc.constant('group'),
      of: fc.array(tie('tree'), { maxLength: 3 }),
      ifEmpty: outcome,
    }),
    fc.record({
      is: fc.constant<'at-least'>('at-least'),
      n: fc.integer({ min: 1, max: 3 }),
      label: fc.constant('some'),
      of: fc.array(tie('tree'), { maxLength: 3 }),
      ifEmpty: outcome,
    }),
    fc.record({ is: fc.constant<'implies'>('implies'), if: tie('tree'), then: tie('tree') }),
    fc
      .constantFrom<Capability>('nav-vor', 'nav-gnss', 'fly', 'approach-ils')
      .map((capability): Clause => ({ is: 'ref', capability })),
  ),
})).tree;

export const flight: fc.Arbitrary<FlightConditions> = fc.record({
  rules: fc.constantFrom<'vfr' | 'ifr'>('vfr', 'ifr'),
  light: fc.constantFrom<'day' | 'night'>('day', 'night'),
  purpose: fc.constantFrom(...purposes),
  airspace: fc.subarray([...airspaces]),
  topFt: fc.integer({ min: 0, max: 20_000 }),
  localTrainingNm: fc.option(fc.integer({ min: 1, max: 100 })),
  overWaterBeyondGlide: fc.boolean(),
  crewOnly: fc.boolean(),
  errand: fc.option(fc.constantFrom(...errands)),
  region: fc.option(fc.constantFrom('Mainland', 'Islands')),
  approaches: fc.subarray([...approaches], { maxLength: 2 }),
});

/** Two meters of different pace, one of them sometimes read earlier than the other; a third that was never read. */
const meters = fc
  .record({
    pace: fc.constantFrom(0, 333, 900, 1000, 1250),
    apart: fc.constantFrom(0, 60, 3000),
    goodForDays: fc.integer({ min: 1, max: 40 }),
    listComplete: fc.boolean(),
  })
  .map(({ pace, apart, goodForDays, listComplete }): Dossier =>
    dossierOf({
      status: {
        completeness: listComplete ? [{ list: 'equipment', stated: { asOf: '2026-01-01', by: 'test' } }] : [],
      },
      meters: {
        definitions: [
          { id: 'log', name: 'Log', kind: 'flight-log', perFlightHour: 1000, offset: 0 },
          { id: 'never', name: 'Never read', kind: 'engine', perFlightHour: 1000, offset: 0 },
          { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: pace, offset: 0 },
        ],
        timeInService: 'log',
        readings: {
          log: { value: 10_000, asOf: instantOf(start - 100), by: 'test' },
          tach: { value: 10_000, asOf: instantOf(start - 100 - apart), by: 'test' },
        },
        utilisation: { perMonth: null, readingGoodForDays: goodForDays },
      },
    }),
  );

const ways: readonly Means[] = meansCapabilities.flatMap((capability) => [
  { id: 'one', capability, members: ['one', 'shared'] },
  { id: 'two', capability, members: ['two', 'shared'] },
]);

const spoken = fc
  .record({
    clause,
    capability: fc.constantFrom<Capability>(...aircraftCapabilities, ...meansCapabilities),
    through: fc.constantFrom('one', 'two', 'shared', null),
    establishes: fc.boolean(),
  })
  .map(({ clause: tree, capability, through, establishes }) => ({ tree, capability, through, establishes }));

export const system: fc.Arbitrary<System> = fc
  .record({
    dossier: meters,
    spoken: fc.array(spoken, { minLength: 1, maxLength: 14 }),
    means: fc.subarray([...ways], { minLength: ways.length - 6 }),
  })
  .map(({ dossier, spoken: each, means }) => {
    const facts: Facts = { ...factsOf(dossier, { version: 'test', types: {} }), means };
    return systemFrom(
      dossier,
      facts,
      each.map(({ tree, capability, through, establishes }, index) => ({
        statement: statementOf(index, tree, capability, through),
        establishes: establishes ? [capability] : [],
      })),
    );
  });

function statementOf(index: number, tree: Clause, capability: Capability, through: string | null): Statement {
  const id = `s${index}`;
  return {
    ruleId: id,
    subject: 'aircraft',
    key: `${id}|aircraft`,
    clause: tree,
    data: {},
    messages: { met: 'm', 'not-met': 'n', 'cannot-tell': 'c', 'not-applicable': 'a' },
    effects: [{ stops: 'capability', capability, ...(through === null ? {} : { through }) }],
    remedies: [],
  };
}
