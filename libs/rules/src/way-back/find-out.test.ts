import { describe, expect, it } from 'vitest';
import { inspector, recordOf, timeInService, totalTime } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { defaultConditions } from '../verdict/conditions.js';
import { answersOf, askersOf, findOut, gainOf, mostUseful } from './find-out.js';
import { supposing } from './supposing.js';
import { snapshotOf } from '../assess/snapshot.js';
import { means, says, smallSystem } from '../../testing/small-system.js';
import { allOf, flight as only, implies, met, notMet, ref, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';

const moment = { instant: '2026-03-02T14:00Z' };
const annual = recordOf({
  kind: 'annual-inspection',
  on: '2026-01-31',
  outcome: 'approved',
  agency: inspector,
  meters: totalTime,
});

it('asks for the signer whose ratings would settle the annual, and says which result that settles', () => {
  const dossier = dossierOf({
    configuration: { aircraft: { certificate: 'standard' } },
    status: { records: [{ ...annual, agency: null }] },
    meters: timeInService,
  });
  const found = findOut(dossier, catalogueOf(), moment).find(
    (each) => each.fact === `status.records.${annual.id}.agency`,
  );
  expect(found?.settles).toContain('annual-inspection|aircraft');
});

it('does not ask for what is recorded', () => {
  const dossier = dossierOf({
    configuration: { aircraft: { certificate: 'standard' } },
    status: { records: [annual] },
    meters: timeInService,
  });
  expect(
    findOut(dossier, catalogueOf(), moment).some((each) => each.settles.includes('annual-inspection|aircraft')),
  ).toBe(false);
});

it('puts facts that open an operation before facts that only settle results, and the more settling first', () => {
  const found = findOut(dossierOf({}), catalogueOf(), moment);
  const ranks = found.map((each) => each.opens.length * 1000 + each.settles.length);
  expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
});

describe('of an aircraft in order but for lists that nobody stated to be complete', () => {
  const without = (...lists: readonly string[]) => {
    const { completeness } = trainer().status;
    return trainer({ status: { completeness: completeness.filter(({ list }) => !lists.includes(list)) } });
  };
  const asked = { instant: goodDay, hours: 1 };
  const about = (...lists: readonly string[]) =>
    findOut(without(...lists), trainerCatalogue, asked, defaultConditions).filter(({ fact }) =>
      lists.some((list) => fact === `status.completeness.${list}`),
    );

  it('one fact opens the flight and what else hangs on it, and says which result it settles', () => {
    const [found, ...others] = about('directives');
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      fact: 'status.completeness.directives',
      subjects: ['directive-list'],
      settles: ['directives|directive-list'],
    });
    expect(found?.opens).toEqual([
      'flight',
      'vfr-day',
      'vfr-night',
      'ifr',
      ...['vor', 'loc', 'ils', 'lnav', 'lp', 'lnav-vnav', 'lpv'].map((each) => `approach-${each}`),
    ]);
  });

  it('each of two opens nothing by itself, and they come in the order of their names', () => {
    const found = about('directives', 'defects');
    expect(found.map(({ fact, opens }) => [fact, opens])).toEqual([
      ['status.completeness.defects', []],
      ['status.completeness.directives', []],
    ]);
  });

  it('what is open already is not opened, and a fact that opens comes first', () => {
    const found = findOut(without('directives'), trainerCatalogue, asked, defaultConditions);
    expect(found[0]?.fact).toBe('status.completeness.directives');
    expect(found.slice(1).every(({ opens }) => opens.length === 0)).toBe(true);
    const inOrder = findOut(trainer(), trainerCatalogue, asked, defaultConditions);
    expect(inOrder.every(({ opens }) => opens.length === 0)).toBe(true);
    expect(inOrder.length).toBeGreaterThan(0);
  });

  it('an operation that stays closed for another reason is not opened', () => {
    const dossier = trainer({ status: { completeness: without('directives').status.completeness, loads: [] } });
    const [found] = findOut(dossier, trainerCatalogue, asked, defaultConditions);
    expect(found?.opens).toContain('approach-ils');
    expect(found?.opens).not.toContain('approach-lpv');
  });
});

describe('supposing that facts turn out well', () => {
  const flight = { ...defaultConditions, approaches: [] };
  const outcome = (clause: Clause, ...facts: readonly string[]) => {
    const system = supposing(smallSystem({ spoken: [says('a', clause, 'fly')] }), new Set(facts));
    return snapshotOf(system, goodDay, 0, flight).outcome(0);
  };

  it.each<readonly [string, Clause, readonly string[], string]>([
    ['the fact is not supposed', unknown('a', ['x']), ['y'], 'cannot-tell'],
    ['nothing is supposed', unknown('a', ['x']), [], 'cannot-tell'],
    ['the fact is supposed', unknown('a', ['x']), ['x'], 'met'],
    ['one of two facts is', unknown('a', ['x', 'y']), ['x'], 'cannot-tell'],
    ['both are', unknown('a', ['x', 'y']), ['y', 'x', 'z'], 'met'],
    ['it waits for no fact', unknown('a', []), ['x'], 'cannot-tell'],
    ['it is known not to be so', notMet('a', { missing: ['x'] }), ['x'], 'not-met'],
    [
      'it is cannot-tell at another time only, and known not to be so today',
      within('a', { from: '2027-01-01T00:00Z' }, { missing: ['x'] }, 'cannot-tell', 'not-met'),
      ['x'],
      'not-met',
    ],
    [
      'it is cannot-tell today, and known not to be so at another time',
      within('a', { before: '2027-01-01T00:00Z' }, { missing: ['x'] }, 'cannot-tell', 'not-met'),
      ['x'],
      'met',
    ],
    [
      'it was told until lately, and the same fact is wanted anew',
      within('a', { before: '2026-01-01T00:00Z' }, { missing: ['x'] }, 'met', 'cannot-tell'),
      ['x'],
      'met',
    ],
    ['it stands in a group', allOf('g', [met('a'), unknown('b', ['x'])], 'met'), ['x'], 'met'],
    ['another member waits', allOf('g', [unknown('a', ['y']), unknown('b', ['x'])], 'met'), ['x'], 'cannot-tell'],
    ['it stands after an if', implies(met('a'), unknown('b', ['x'])), ['x'], 'met'],
    ['it is the if', implies(unknown('b', ['x']), notMet('a')), ['x'], 'not-met'],
    ['another capability is asked', ref('night'), ['x'], 'cannot-tell'],
  ])('%s', (_, clause, facts, expected) => {
    expect(outcome(clause, ...facts)).toBe(expected);
  });

  it('leaves everything else of the system as it is', () => {
    const spoken = [says('a', unknown('a', ['x']), 'two-way-radio', { through: 'r1' }), says('b', met('b'), 'fly')];
    const system = smallSystem({ spoken, means: [means('r1', 'two-way-radio')] });
    expect(supposing(system, new Set())).toBe(system);
    const better = supposing(system, new Set(['x']));
    expect(better.establishes).toEqual(system.establishes);
    expect(snapshotOf(better, goodDay, 0, flight).capability('two-way-radio')).toBe('met');
    expect(snapshotOf(system, goodDay, 0, flight).capability('two-way-radio')).toBe('cannot-tell');
  });
});

describe('over a few statements', () => {
  const flight = { ...defaultConditions, approaches: [], rules: 'vfr' as const, purpose: 'private' as const };
  const operations = {
    flight,
    ifr: { ...flight, rules: 'ifr' as const },
    night: { ...flight, light: 'night' as const },
  };
  const asking = { instant: goodDay, hoursAhead: 0, flight, operations };
  const system = smallSystem({
    spoken: [
      says('able', met('a', { missing: ['known'] }), 'fly'),
      says('two', allOf('g', [unknown('b', ['x', 'y']), unknown('c', ['x']), met('d')], 'met'), 'night'),
      says('one', unknown('b', ['y']), 'night'),
      says('dark', implies(only('at-night', { light: 'night' }), unknown('a', ['z'])), 'fly'),
    ],
  });
  const now = answersOf(system, asking);

  it('answers each operation by its own conditions, and names what cannot be told of the flight', () => {
    expect(now.ready).toEqual({ flight: 'yes', ifr: 'no', night: 'cannot-tell' });
    expect([...now.open]).toEqual([1, 2].map((at) => [at, system.statements[at]]));
  });

  it('names each missing fact once, with the statements that ask for it', () => {
    const asked = [...askersOf(now)].map(([fact, statements]) => [fact, [...statements].map(({ key }) => key)]);
    expect(asked).toEqual([
      ['x', ['two']],
      ['y', ['two', 'one']],
    ]);
  });

  it('settles what then can be told, and opens what then is a yes and was none', () => {
    const gain = (...facts: readonly string[]) => gainOf(supposing(system, new Set(facts)), now, asking);
    expect(gain('x')).toEqual({ opens: [], settles: [] });
    expect(gain('y')).toEqual({ opens: [], settles: ['one'] });
    expect(gain('x', 'y')).toEqual({ opens: [], settles: ['two', 'one'] });
    expect(gain('x', 'y', 'z')).toEqual({ opens: ['night'], settles: ['two', 'one'] });
  });
});

it('comes first what opens most, then what settles most, then what is first by name', () => {
  const fact = (name: string, opens: number, settles: number) => ({
    fact: name,
    opens: Array.from({ length: opens }, String),
    settles: Array.from({ length: settles }, String),
  });
  const facts = [fact('c', 0, 1), fact('a', 0, 1), fact('d', 0, 3), fact('b', 0, 1), fact('f', 1, 0), fact('e', 2, 0)];
  const order = (list: typeof facts) => [...list].sort(mostUseful).map((each) => each.fact);
  expect(order(facts)).toEqual(['e', 'f', 'd', 'a', 'b', 'c']);
  expect(order(facts.toReversed())).toEqual(['e', 'f', 'd', 'a', 'b', 'c']);
});
