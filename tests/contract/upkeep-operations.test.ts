import { describe, expect, it } from 'vitest';
import { assess } from '../../libs/rules/src/assess/assess.js';
import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import type { Obligation, RecordKind } from '../../libs/rules/src/dossier/status.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import type { Part } from '../../libs/rules/testing/dossiers.js';
import { entries, goodDay, trainer, trainerCatalogue, trainerRecords } from '../../libs/rules/testing/trainer.js';

/** What inspections, readings and after-work tests cost at the level of whole flights: the well-kept trainer but for one thing. */

const vfr: FlightConditions = {
  rules: 'vfr',
  light: 'day',
  purpose: 'private',
  airspace: [],
  topFt: 6000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};
const ifr: FlightConditions = { ...vfr, rules: 'ifr', airspace: ['controlled'], topFt: 9_000 };
const flights = {
  vfr,
  'vfr-crew': { ...vfr, crewOnly: true },
  'vfr-class-c': { ...vfr, airspace: ['controlled', 'class-b-c'] },
  lesson: { ...vfr, purpose: 'training-provided' },
  ifr,
  'ifr-uncontrolled': { ...ifr, airspace: [] },
  'ifr-12000': { ...ifr, topFt: 12_000 },
  vor: { ...ifr, approaches: ['vor'] },
  ils: { ...ifr, approaches: ['ils'] },
  lpv: { ...ifr, approaches: ['lpv'] },
} as const satisfies Record<string, FlightConditions>;
type Flight = keyof typeof flights;
const names = Object.keys(flights) as Flight[];

const old = <K extends keyof typeof trainerRecords>(name: K, date: string): Part<Dossier> => {
  const record = trainerRecords[name];
  return entries({ without: [name], and: [{ ...record, id: `${record.id}-old`, done: { date, at: null } }] });
};
const owed = (what: RecordKind, subject = 'aircraft'): Part<Dossier> => {
  const obligation: Obligation = {
    id: `${what}:${subject}`,
    what,
    subject,
    since: { date: '2026-03-12', at: null },
    becauseOf: 'work.done',
    touched: null,
    closedBy: null,
  };
  return { status: { obligations: [obligation] } };
};
const allIfr: readonly Flight[] = ['ifr', 'ifr-12000', 'vor', 'ils', 'lpv'];

const cases: readonly {
  readonly name: string;
  readonly change: Part<Dossier>;
  readonly no?: readonly Flight[];
  readonly cannotTell?: readonly Flight[];
}[] = [
  { name: 'nothing amiss', change: {} },
  { name: 'annual lapsed', change: old('annual', '2025-02-10'), no: names },
  {
    name: '100-hour overflown',
    change: { meters: { readings: { tach: { value: 414_001, asOf: '2026-03-15T20:00Z', by: 'Desk' } } } },
    no: ['lesson'],
  },
  { name: 'VOR check lapsed: the ILS of that receiver stays', change: old('vor', '2026-02-01'), no: ['vor'] },
  { name: 'static system test lapsed', change: old('static', '2024-02-10'), no: allIfr },
  { name: 'altimeter test lapsed', change: old('altimeter', '2024-02-10'), no: allIfr },
  {
    name: 'altimeter tested to 9,000 ft',
    change: entries({ without: ['altimeter'], and: [{ ...trainerRecords.altimeter, testedToFt: 10_000 }] }),
    no: ['ifr-12000'],
  },
  {
    name: 'transponder test lapsed with ADS-B in the box: two rules collide on every flight',
    change: old('transponder', '2024-02-10'),
    no: [...allIfr, 'vfr-class-c'],
    cannotTell: ['vfr', 'vfr-crew', 'lesson', 'ifr-uncontrolled'],
  },
  { name: 'static system opened', change: owed('static-leak-test', 'static-1'), no: allIfr },
  {
    name: 'altitude chain touched',
    change: owed('altitude-correspondence-test'),
    no: [...allIfr, 'vfr-class-c'],
  },
  { name: 'navigator not checked after its installation', change: owed('gnss-function-check', 'gps1'), no: ['lpv'] },
  {
    name: 'no ADS-B performance report after work',
    change: owed('ads-b-report'),
    cannotTell: ['vfr-class-c', 'ifr-12000'],
  },
  { name: 'compass not swung', change: owed('compass-swing') },
  {
    name: 'handling changed, not flown',
    change: owed('pilot-flight-check'),
    no: names.filter((each) => each !== 'vfr-crew'),
  },
  { name: 'worked behind the panel', change: owed('controls-check'), no: names },
  { name: 'work not released', change: owed('release-entry', 'gps1'), no: names },
];

describe('what upkeep costs', () => {
  it.each(cases.map((each) => [each.name, each] as const))('%s', (_, { change, no = [], cannotTell = [] }) => {
    const dossier = trainer(change);
    const expected = (name: Flight) => (no.includes(name) ? 'no' : cannotTell.includes(name) ? 'cannot-tell' : 'yes');
    const found = names.map((name) => [
      name,
      assess(dossier, trainerCatalogue, { instant: goodDay }, flights[name]).operations['flight']?.ready,
    ]);
    expect(Object.fromEntries(found)).toEqual(Object.fromEntries(names.map((name) => [name, expected(name)])));
  });

  it('carries the lowest tested altitude on the verdict', () => {
    const lower = entries({ without: ['reporting'], and: [{ ...trainerRecords.reporting, testedToFt: 12_500 }] });
    expect(assess(trainer(lower), trainerCatalogue, { instant: goodDay }, ifr).operations['flight']?.topFt).toBe(
      12_500,
    );
  });

  it('counts the hours left to the 100-hour inspection, and to nothing for a private flight', () => {
    const left = (flight: FlightConditions) =>
      assess(trainer(), trainerCatalogue, { instant: goodDay }, flight).operations['flight']?.hoursLeft;
    // Inspected at 4,040.0 h, read at 4,070.0 h: due at 4,140.0 h.
    expect(left(flights.lesson)).toBe(7_000);
    expect(left(vfr)).toBeUndefined();
  });
});
