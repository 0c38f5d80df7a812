import { describe, expect, it } from 'vitest';
import * as face from '../../libs/rules/src/index.js';
import { goodModeS, perfectAltimeter, vorCheck } from '../../libs/rules/testing/sample-readings.js';
import { goodDay, trainer, trainerCatalogue } from '../../libs/rules/testing/trainer.js';

/** What programs outside call by name. Their figures are checked in tests/reference; here, that each is there and answers in its form. */
describe('the public face', () => {
  it.each<readonly [string, () => unknown, unknown]>([
    ['lastGoodDay', () => face.lastGoodDay('2025-03-15', 12), '2026-03-31'],
    ['databaseCycle', () => face.databaseCycle('2026-03-19').effective, '2026-03-19'],
    ['databaseCycleAt', () => face.databaseCycleAt('2026-03-19T09:00Z').next, '2026-03-19'],
    ['nextHundredHour', () => face.nextHundredHour({ due: 650, done: 658, enRoute: true }).next, 750],
    ['wireVoltageDrop', () => face.wireVoltageDrop({ awg: 6, lengthFt: 107, currentA: 20 }), 0.9416],
    ['smallestWireForDrop', () => face.smallestWireForDrop({ dropV: 1, lengthFt: 50, currentA: 20 }), 8],
    ['longestRun', () => face.longestRun({ awg: 10, currentA: 20, dropV: 1 }), 39.68],
    ['bundleCurrent', () => face.bundleCurrent({ freeAirA: 47, bundleFactor: 0.6, altitudeFactor: 0.91 }), 25.66],
    ['aluminiumInPlaceOf', () => face.aluminiumInPlaceOf(10), 8],
    ['aluminiumVoltageDrop', () => face.aluminiumVoltageDrop({ awg: 8, lengthFt: 100, currentA: 10 }), 1.26],
    ['mainWiresDropV', () => face.mainWiresDropV(28), 0.56],
    ['groundReturnDropV', () => face.groundReturnDropV(20), 0.1],
    ['protectorFor', () => face.protectorFor(20), { breakerA: 7.5, fuseA: 5 }],
    [
      'emptyWeightAfter',
      () => face.emptyWeightAfter({ weightLb: 1000, armIn: 10 }, [{ weightLb: -10, armIn: -20 }]),
      { weightLb: 990, momentLbIn: 10_200, armIn: 10.303, shiftIn: 0.303 },
    ],
    [
      'loadedCentre',
      () =>
        face.loadedCentre([
          { weightLb: 100, armIn: 10 },
          { weightLb: 300, armIn: 30 },
        ]),
      { weightLb: 400, momentLbIn: 10_000, armIn: 25 },
    ],
    ['navChannel', () => face.navChannel(110.3), { kind: 'localizer', glideSlopeMHz: 335 }],
    ['leastAdsBCodes', () => face.leastAdsBCodes(), { nic: 7, nacp: 8, nacv: 1, sil: 3, sda: 2 }],
    ['arinc429LabelBits', () => face.arinc429LabelBits('203'), 0xc1],
    ['arinc429WordOf', () => face.arinc429WordOf({ label: '012', sdi: 0, data: 2000, ssm: 3 }), 0xe01f4050],
    ['viewAngle', () => face.viewAngle({ offsetIn: 30, distanceIn: 30 }), 45],
    ['vhfHarmonic', () => face.vhfHarmonic(121.15), { order: 13, landsMHz: 1574.95, offsetMHz: -0.47 }],
    ['vhfChannel', () => face.vhfChannel('118.010'), { spacingKHz: 8.33, carrierMHz: 118.0083 }],
  ])('%s', (_name, call, expected) => {
    expect(call()).toEqual(expected);
  });

  it.each([
    ['judgeAdsBReport', () => face.judgeAdsBReport({ nic: 8, nacp: 9, nacv: 2, sil: 3, sda: 2 })],
    ['judgeAltimeterTest', () => face.judgeAltimeterTest(perfectAltimeter(20_000))],
    ['judgeTransponderTest', () => face.judgeTransponderTest(goodModeS())],
    ['judgeVorCheck', () => face.judgeVorCheck(vorCheck('ground-checkpoint', 270, 274))],
  ])('%s', (_name, call) => {
    const { outcome, points } = call();
    expect(outcome).toBe('met');
    expect(points.length).toBeGreaterThan(0);
    for (const point of points)
      expect(Object.keys(point)).toEqual(expect.arrayContaining(['what', 'value', 'limit', 'outcome', 'source']));
  });

  it('assess, horizon, wayBack, findOut and the rule book answer for one aircraft', () => {
    const dossier = trainer();
    const moment = { instant: goodDay };
    expect(face.assess(dossier, trainerCatalogue, moment).operations['flight']?.ready).toBe('yes');
    expect(face.horizon(dossier, trainerCatalogue, goodDay, '2026-04-01T00:00Z').windows.length).toBeGreaterThan(0);
    expect(face.findOut(dossier, trainerCatalogue, moment)).toBeInstanceOf(Array);
    expect(face.ruleBook.length).toBeGreaterThan(60);
    expect(face.wayBack).toBeTypeOf('function');
  });

  it('admit, apply and replay agree', () => {
    const added = { kind: 'aircraft.add', version: 1, aircraft: trainer().configuration.aircraft } as const;
    const blank = face.blankDossier('aircraft');
    expect(face.admit(blank, trainerCatalogue, added)).toEqual([]);
    expect(face.replay([added])).toEqual(face.apply(blank, added));
  });
});
