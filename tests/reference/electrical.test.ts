import { describe, expect, test } from 'vitest';
import { longestRun } from '../../libs/rules/src/calculations/wire.js';
import type { Circuit, Electrical } from '../../libs/rules/src/dossier/installation.js';
import { protectorTable, wireTable } from '../../libs/rules/src/facts/wire.js';
import { circuitOf, typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { said } from './said.js';

/** AC 43.13-1B chapter 11, through the rules that judge a recorded electrical system: each limit itself, and a little more. */

const at = '2026-03-02T14:00Z';
const aircraft = (part: Partial<Electrical>) =>
  dossierOf({
    configuration: {
      electrical: {
        busV: 28,
        alternatorA: 60,
        batteryAh: null,
        batteryShare: null,
        loadWatch: 'none',
        circuits: [],
        ...part,
      },
    },
  });
const circuit = (rule: string, part: Partial<Circuit>, busV = 28) =>
  said(rule, { dossier: aircraft({ busV, circuits: [circuitOf({ id: 'c', ...part })] }), at, subject: 'c' });

describe('table 11-3, breakers and fuses for copper wire', () => {
  const rows = protectorTable.value.flatMap(({ awg, breakerA, fuseA }) => [
    ...(breakerA === null ? [] : [[awg, 'breaker', breakerA] as const]),
    ...(fuseA === null ? [] : [[awg, 'fuse', fuseA] as const]),
  ]);

  test('thirteen gauges, eleven breakers, thirteen fuses', () => {
    const of = (kind: string) => rows.filter(([, each]) => each === kind).length;
    expect([protectorTable.value.length, of('breaker'), of('fuse')]).toEqual([13, 11, 13]);
  });

  test.each(rows)(
    'gauge %i: a %s of %f A guards it, a tenth more asks for data (11-48)',
    (wireAwg, protector, ratingA) => {
      const guards = (rated: number) =>
        circuit('breaker-matches-wire', { wireAwg, protector, ratingA: rated, singleWireInOpenAir: false });
      expect([guards(ratingA), guards(ratingA + 0.1)]).toEqual(['met', 'cannot-tell']);
    },
  );

  test('11-49: a single wire in open air may have the next larger breaker of the chart, and no larger one', () => {
    const guards = (ratingA: number) =>
      circuit('breaker-matches-wire', { wireAwg: 20, protector: 'breaker', ratingA, singleWireInOpenAir: true });
    expect([guards(10), guards(10.1)]).toEqual(['met', 'cannot-tell']);
  });
});

describe('table 11-9, under its note 1', () => {
  test.each(
    wireTable.value.flatMap(({ awg, bundleA }) =>
      (['c105', 'c150', 'c200'] as const).map((wireRating) => [awg, wireRating, bundleA[wireRating]] as const),
    ),
  )('gauge %i, %s: %f A pass, a tenth more does not', (wireAwg, wireRating, mostA) => {
    const ampacity = { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null } as const;
    const carries = (loadA: number) => circuit('wire-current', { wireAwg, wireRating, ampacity, loadA });
    expect([carries(mostA), carries(mostA + 0.1)]).toEqual(['met', 'not-met']);
  });

  test('11-66d to f, example 2: No. 14, 47 A free air, 0.91 at 20,000 ft, 0.6 in the bundle carry 25.66 A', () => {
    const ampacity = { by: 'curves', freeAirA: 47, bundleFactor: 0.6, altitudeFactor: 0.91 } as const;
    const carries = (loadA: number) => circuit('wire-current', { wireAwg: 14, wireRating: 'c200', ampacity, loadA });
    expect([20, 25.66, 25.67].map(carries)).toEqual(['met', 'met', 'not-met']);
  });
});

describe('table 11-6, drop from the bus to the ground of the equipment', () => {
  test.each([
    [14, false, 0.5],
    [28, false, 1],
    [115, false, 4],
    [200, false, 7],
    // The column for intermittent loads is known from memory.
    [14, true, 1],
    [28, true, 2],
    [115, true, 8],
    [200, true, 14],
  ])('%i V, intermittent %s: %f V', (busV, intermittent, mostV) => {
    const loses = (wireLengthFt: number) =>
      circuit('voltage-drop', { wireAwg: 10, wireRating: 'c105', wireLengthFt, loadA: 20, intermittent }, busV);
    const run = { awg: 10, currentA: 20, dropV: mostV };
    const hotFt = longestRun({ ...run, conductorC: 105 });
    const coldFt = longestRun(run);
    expect([hotFt, hotFt + 0.1, coldFt, coldFt + 0.1].map(loses)).toEqual([
      'met',
      'cannot-tell',
      'cannot-tell',
      'not-met',
    ]);
  });

  test('11-66c, example 1: 28 V, 20 A continuous over 50 ft fall between No. 8 and No. 10: No. 8', () => {
    const loses = (wireAwg: number) =>
      circuit('voltage-drop', { wireAwg, wireRating: 'c105', wireLengthFt: 50, loadA: 20, intermittent: false });
    expect([loses(8), loses(10)]).toEqual(['met', 'not-met']);
  });
});

describe('11-35a, continuous load', () => {
  const draws = (loadA: number, loadWatch: Electrical['loadWatch']) =>
    said('continuous-load', {
      dossier: dossierOf(
        aircraft({ busV: 28, alternatorA: 60, loadWatch }),
        { configuration: { units: [unitOf({ id: 'u', typeId: 't' })] } },
        { status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] } },
      ),
      types: [typeOf({ id: 't', functions: ['com'], drawA: { at14V: null, at28V: loadA } })],
      at,
    });

  test('80 % of 60 A is 48 A, without a special placard and without monitoring', () => {
    expect([draws(48, 'none'), draws(48.01, 'none')]).toEqual(['met', 'not-met']);
  });

  test('a placard or monitoring lifts the 80 %, and never the output itself', () => {
    for (const watch of ['placard', 'monitoring'] as const)
      expect([draws(48.01, watch), draws(60, watch), draws(60.01, watch)]).toEqual(['met', 'met', 'not-met']);
  });
});
