import { describe, expect, it } from 'vitest';
import { limitationOf, typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { itemsOf } from '../../testing/equipment.js';
import type { EquipmentType, FunctionCode } from '../catalogue/type.js';
import type { Aircraft, EquipmentItem } from '../dossier/aircraft.js';
import type { InstalledUnit } from '../dossier/installation.js';
import { dayItems } from '../facts/equipment.js';
import { factsOf } from '../graph/facts.js';
import { timelessOutcome } from './entry-outcome.js';
import { boundBy91205, itemFitted, itemsServedBy, needsClause } from './equipment-items.js';
import { missingPaths } from './gaps.js';

const { source } = dayItems[0]!;
const unitsOf = (units: readonly InstalledUnit[], ...types: readonly EquipmentType[]) => [
  ...factsOf(dossierOf({ configuration: { units } }), catalogueOf(...types)).units.values(),
];
const factsWith = (aircraft: Partial<Aircraft>) => factsOf(dossierOf({ configuration: { aircraft } }), catalogueOf());

// 91.205(a): powered civil aircraft with a standard airworthiness certificate.
it.each<[string, Partial<Aircraft>, string]>([
  ['an airplane, engine not recorded', { kind: 'airplane', engine: null }, 'met'],
  ['a helicopter, engine not recorded', { kind: 'helicopter', engine: null }, 'met'],
  ['a glider with an engine', { kind: 'glider', engine: 'reciprocating' }, 'met'],
  ['a glider without', { kind: 'glider', engine: 'none' }, 'not-met'],
  ['a glider, engine not recorded', { kind: 'glider', engine: null }, 'cannot-tell'],
  ['a balloon with a burner recorded as its engine', { kind: 'balloon', engine: 'reciprocating' }, 'not-met'],
  ['an experimental airplane', { certificate: 'experimental', engine: 'reciprocating' }, 'not-met'],
  ['certificate not recorded', { certificate: null, engine: 'reciprocating' }, 'cannot-tell'],
])('bound by 91.205: %s: %s', (_, aircraft, outcome) => {
  expect(timelessOutcome(boundBy91205(factsWith({ certificate: 'standard', ...aircraft })))).toBe(outcome);
});

it('any one of its functions makes a unit serve an item', () => {
  const served = (...functions: readonly FunctionCode[]) => {
    const [unit] = unitsOf([unitOf({ id: 'u', functions: [...functions] })]);
    return unit && itemsServedBy(unit);
  };
  expect(served('gnss')).toEqual(['dme-or-rnav']);
  expect(served('altimeter', 'com')).toEqual(['altimeter', 'sensitive-altimeter']);
  expect(served('com')).toEqual([]);
});

it('a portable unit serves no item, nor one that its manual lets stand in for none', () => {
  const silent = typeOf({ id: 'display', functions: ['attitude'] });
  const limited = typeOf({
    ...silent,
    limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['attitude'] })],
  });
  const served = (part: Partial<InstalledUnit>, ...types: readonly EquipmentType[]) => {
    const [unit] = unitsOf([unitOf({ id: 'u', ...part })], ...types);
    return unit && itemsServedBy(unit);
  };
  expect(served({ functions: ['attitude'] })).toEqual(['pitch-and-bank']);
  expect(served({ functions: ['attitude', 'portable-display'] })).toEqual([]);
  expect(served({ typeId: 'display' }, silent)).toEqual(['pitch-and-bank']);
  expect(served({ typeId: 'display' }, limited)).toEqual([]);
});

it('what decides whether an item is asked for is named where nobody recorded it', () => {
  const missing = missingPaths(needsClause(factsWith({ kind: 'airplane' }), 'day', dayItems));
  expect(missing.filter((path) => !path.startsWith('configuration.equipment'))).toEqual(
    ['liquidCooled', 'altitudeEngine', 'retractableGear', 'basis', 'manufactured'].map(
      (each) => `configuration.aircraft.${each}`,
    ),
  );
});

describe('an item that units make up', () => {
  const off = { since: { date: '2026-01-10', at: null }, placarded: true, recorded: true };
  const noAltimeter = typeOf({
    id: 'display',
    functions: ['altimeter'],
    limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['altimeter'] })],
  });
  const noArea = typeOf({
    id: 'navigator',
    functions: ['gnss'],
    limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['gnss'] })],
  });
  const fitted = (
    item: EquipmentItem,
    unitId: string | null,
    units: readonly InstalledUnit[],
    ...types: readonly EquipmentType[]
  ) => {
    const dossier = dossierOf({ configuration: { units, equipment: itemsOf([item], { unitId }) } });
    return timelessOutcome(itemFitted(factsOf(dossier, catalogueOf(...types)), item, source));
  };
  const displays = ['one', 'two'].map((id) => unitOf({ id, typeId: 'display' }));

  it('is not there where the unit named stands in for nothing, whatever stands beside it', () => {
    expect(fitted('altimeter', 'two', displays, noAltimeter)).toBe('not-met');
    expect(fitted('altimeter', null, displays, noAltimeter)).toBe('cannot-tell');
  });

  it('is not known to be there by a unit that stands in for nothing with one of the two functions', () => {
    expect(fitted('dme-or-rnav', null, [unitOf({ id: 'n', typeId: 'navigator' })], noArea)).toBe('cannot-tell');
    expect(fitted('dme-or-rnav', null, [unitOf({ id: 'n', functions: ['gnss'] })])).toBe('met');
  });

  it.each<[string, string | null, Partial<InstalledUnit>, string]>([
    ['another unit is named as the item', 'other', {}, 'met'],
    ['the item is named as that unit', 'vague', {}, 'cannot-tell'],
    ['no unit is named', null, {}, 'cannot-tell'],
    ['it is deactivated', 'other', { deactivated: off }, 'cannot-tell'],
  ])('beside a unit of which nothing is known, where %s: %s', (_, unitId, part, outcome) => {
    const units = [unitOf({ id: 'vague', ...part }), unitOf({ id: 'other', functions: ['other'] })];
    expect(fitted('altimeter', unitId, units)).toBe(outcome);
  });
});
