import { describe, expect, test } from 'vitest';
import { assess } from '../../libs/rules/src/assess/assess.js';
import { openObligations } from '../../libs/rules/src/changes/obligations.js';
import type { Touched } from '../../libs/rules/src/dossier/status.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import { mechanic, radioStation, recordOf, typeOf } from '../../libs/rules/testing/builders.js';
import { catalogueOf } from '../../libs/rules/testing/changes.js';
import { entries, goodDay, trainer, trainerRecords, trainerTypes } from '../../libs/rules/testing/trainer.js';
import { said } from './said.js';

/** Decisions that follow from several texts together, asked of the well-kept trainer. */

const vfr: FlightConditions = {
  rules: 'vfr',
  light: 'day',
  purpose: 'private',
  airspace: ['controlled'],
  topFt: 3_000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};
const done = (name: keyof typeof trainerRecords, date: string) =>
  entries({ without: [name], and: [{ ...trainerRecords[name], id: 'asked', done: { date, at: null } }] });

describe('14 CFR 91.413(a) lapsed: 91.215(b), 91.225(f)', () => {
  const plain = catalogueOf(
    ...Object.values(trainerTypes).map((each) =>
      each === trainerTypes.transponder
        ? typeOf({ ...each, functions: ['transponder'], authorisations: [{ tso: 'C112e', class: '1' }] })
        : each,
    ),
  );
  const lapsed = trainer(done('transponder', '2024-02-28'));
  const ready = (flight: FlightConditions, catalogue = plain) =>
    assess(lapsed, catalogue, { instant: goodDay }, flight).operations['flight']?.ready;

  test('class E at 3,000 ft, no ring, no ADS-B through that unit: the flight is allowed, the transponder stays off', () => {
    expect(ready(vfr)).toBe('yes');
  });

  test.each([
    ['class C', ['controlled', 'class-b-c']],
    ['within 30 NM of an airport of appendix D section 1', ['controlled', 'ring-30nm']],
  ] as const)('%s asks for a transponder that may be used: no', (_name, airspace) => {
    expect(ready({ ...vfr, airspace })).toBe('no');
  });

  test('where the same box sends ADS-B, which must transmit at all times, no text says which yields', () => {
    expect(ready(vfr, catalogueOf(...Object.values(trainerTypes)))).toBe('cannot-tell');
  });

  test('IFR in controlled airspace is lost with it: 91.411(a)(1) names appendix F too', () => {
    expect(ready({ ...vfr, rules: 'ifr' })).toBe('no');
  });
});

describe('what part 91 asks of IFR in controlled airspace, one thing at a time', () => {
  const ifr: FlightConditions = { ...vfr, rules: 'ifr', topFt: 8_000, approaches: ['vor'] };
  const catalogue = catalogueOf(...Object.values(trainerTypes));
  const ready = (dossier: ReturnType<typeof trainer>, flight = ifr) =>
    assess(dossier, catalogue, { instant: goodDay }, flight).operations['flight']?.ready;

  test('with everything in order it may go', () => {
    expect(ready(trainer())).toBe('yes');
  });

  test.each([
    ['91.409(a), annual', 'annual', '2025-02-28'],
    ['91.411(a)(1), static system', 'static', '2024-02-28'],
    ['91.411(a)(1), altimeter', 'altimeter', '2024-02-28'],
    ['91.411(a)(1), altitude reporting', 'reporting', '2024-02-28'],
    ['91.413(a), transponder', 'transponder', '2024-02-28'],
    ['91.207(d), emergency transmitter', 'locator', '2025-02-28'],
    ['91.171, VOR, where it is used', 'vor', '2026-02-13'],
  ] as const)('%s lapsed: no', (_name, name, date) => {
    expect(ready(trainer(done(name, date)))).toBe('no');
  });

  test('91.411(d): above the highest altitude to which all altimeters and the reporting were tested: no', () => {
    const to9 = trainer(
      entries({ without: ['reporting'], and: [{ ...trainerRecords.reporting, id: 'asked', testedToFt: 9_000 }] }),
    );
    expect([ready(to9, { ...ifr, topFt: 9_000 }), ready(to9, { ...ifr, topFt: 9_001 })]).toEqual(['yes', 'no']);
  });

  test('91.409(b) asks of hire, and of a lesson in a provided aircraft, alone', () => {
    const flight = { ...ifr, purpose: 'private' } as const;
    const old = trainer(entries({ without: ['hundred'] }), {
      meters: { readings: { tach: { value: 410_001, asOf: '2026-03-15T20:00Z', by: 'Desk' } } },
    });
    expect([ready(old, flight), ready(old, { ...flight, purpose: 'training-provided' })]).toEqual(['yes', 'no']);
  });
});

describe('tests that work calls for', () => {
  const since = { date: '2026-03-10', at: null };
  const worked = (touched: Touched) =>
    trainer({
      status: {
        obligations: openObligations(trainer(), {
          touched: [touched],
          unitId: 'xpdr1',
          performed: since,
          kind: 'unit.amend',
          release: false,
        }),
      },
    });

  test.each([
    ['91.411(a)(2): the static system opened and closed', 'static-system', ['static-leak-test']],
    ['91.411(a)(3): work on the altitude reporting system', 'altitude-chain', ['altitude-correspondence-test']],
    ['91.413(b): work on a transponder', 'transponder', ['altitude-correspondence-test']],
    ['91.407(b): work that may change the handling', 'flight-characteristics', ['pilot-flight-check']],
    ['AC 43.13-1B 12-37a(6): any change to the electrical system', 'electrical', ['compass-swing']],
    ['AC 43.13-1B 12-37a: ferrous metal in the cockpit', 'ferrous', ['compass-swing']],
  ] as const)('%s', (_name, touched, tests) => {
    expect(worked(touched).status.obligations.map(({ what }) => what)).toEqual(tests);
  });

  test('91.411(a)(2): a leak test of the day before the opening does not answer it, one of the day after does', () => {
    const opened = worked('static-system');
    const tested = (on: string) =>
      said('tests-after-change', {
        dossier: {
          ...opened,
          status: {
            ...opened.status,
            records: [
              ...opened.status.records,
              recordOf({ kind: 'static-leak-test', on, subjects: ['static-1'], agency: mechanic }),
            ],
          },
        },
        types: Object.values(trainerTypes),
        at: goodDay,
      });
    expect([tested('2026-03-09'), tested('2026-03-11')]).toEqual(['not-met', 'met']);
  });

  test('91.413(b): the correspondence test after work on a transponder, by a rated station', () => {
    const touched = worked('transponder');
    const tested = (on: string, agency = radioStation) =>
      said('tests-after-change', {
        dossier: {
          ...touched,
          status: {
            ...touched.status,
            records: [...touched.status.records, recordOf({ kind: 'altitude-correspondence-test', on, agency })],
          },
        },
        types: Object.values(trainerTypes),
        at: goodDay,
      });
    expect([tested('2026-03-09'), tested('2026-03-11'), tested('2026-03-11', mechanic)]).toEqual([
      'not-met',
      'met',
      'not-met',
    ]);
  });
});
