import { describe, expect, test } from 'vitest';
import type { Agency, Rating } from '../../libs/rules/src/dossier/common.js';
import { batteryReplacement, release, tasks } from '../../libs/rules/src/rules/who-may.js';

/** Who may do or sign what, by the texts of 14 CFR in the issues of August and September 2026. */

const holder = (kind: Agency['kind'], ...ratings: readonly Rating[]): Agency => ({
  kind,
  name: 'A. Lorne',
  certificate: 'C-1',
  ratings: [...ratings],
});
const airframeMechanic = holder('mechanic', 'airframe');
const mechanic = holder('mechanic', 'airframe', 'powerplant');
const inspector = holder('mechanic', 'airframe', 'powerplant', 'inspection-authorization');
const radio1 = holder('repair-station', 'radio-1');
const radio3 = holder('repair-station', 'radio-3');
const instrument1 = holder('repair-station', 'instrument-1');
const instrument2 = holder('repair-station', 'instrument-2');
const airframeStation = holder('repair-station', 'station-airframe');
const limitedStation = holder('repair-station', 'limited-for-test');
const limitedRadio = holder('repair-station', 'radio-limited');
const limitedInstrument = holder('repair-station', 'instrument-limited');
const maker = holder('manufacturer');
const carrier = holder('carrier');
const pilot = holder('pilot', 'private-pilot');
const sportPilot = holder('pilot', 'sport-pilot');
const lightSportRepairman = holder('repairman', 'light-sport-maintenance');

/** `open`: which makes a limited rating names, or whether the maker installed the unit, is not recorded. */
const yes = true;
const no = false;
const open = null;

describe.each([
  [
    '91.409(a)(1), 43.7, 65.95(a)(2): annual inspection',
    tasks.annualInspection,
    [
      [inspector, yes],
      [airframeStation, yes],
      [maker, yes],
      [mechanic, no],
      [radio3, no],
      [pilot, no],
      [lightSportRepairman, no],
    ],
  ],
  [
    '91.409(b), 65.85(a), 65.87(a): 100-hour inspection, airframe and powerplant both',
    tasks.hundredHour,
    [
      [mechanic, yes],
      [inspector, yes],
      [airframeStation, yes],
      [maker, yes],
      [airframeMechanic, no],
      [pilot, no],
    ],
  ],
  [
    '91.409(d)(1): progressive inspection',
    tasks.progressive,
    [
      [inspector, yes],
      [airframeStation, yes],
      [maker, yes],
      [mechanic, no],
    ],
  ],
  [
    '91.327(b)(2), (c)(1): condition and 100-hour inspection of light-sport aircraft',
    tasks.lightSportInspection,
    [
      [lightSportRepairman, yes],
      [mechanic, yes],
      [airframeStation, yes],
      [holder('repairman'), no],
      [pilot, no],
    ],
  ],
  [
    '91.411(b): static system',
    tasks.staticTest,
    [
      [airframeMechanic, yes],
      [instrument1, yes],
      [airframeStation, yes],
      [limitedStation, yes],
      [maker, yes],
      [limitedInstrument, open],
      [radio3, no],
      [pilot, no],
    ],
  ],
  [
    '91.411(b): altimeter and altitude reporting; a mechanic is named for the static system only',
    tasks.altimeterTest,
    [
      [instrument1, yes],
      [airframeStation, yes],
      [limitedStation, yes],
      [maker, yes],
      [limitedInstrument, open],
      [airframeMechanic, no],
      [inspector, no],
      [instrument2, no],
      [radio3, no],
    ],
  ],
  [
    '91.413(c): transponder; no mechanic, with inspection authorization or without',
    tasks.transponderTest,
    [
      [radio3, yes],
      [limitedStation, yes],
      [carrier, yes],
      [limitedRadio, open],
      [maker, open],
      [radio1, no],
      [instrument1, no],
      [airframeStation, no],
      [inspector, no],
      [pilot, no],
    ],
  ],
  [
    'part 43 appendix E(c): integration test, either side of the chain',
    tasks.correspondence,
    [
      [instrument1, yes],
      [radio3, yes],
      [airframeMechanic, no],
      [radio1, no],
    ],
  ],
  [
    '91.407(b): flight after work that may change the handling',
    tasks.pilotCheck,
    [
      [pilot, yes],
      [sportPilot, no],
      [mechanic, no],
    ],
  ],
] as const)('%s', (_name, task, rows) => {
  test.each(rows.map(([agency, may]) => [`${agency.kind} ${agency.ratings?.join(', ') ?? ''}`, agency, may] as const))(
    '%s',
    (_who, agency, may) => {
      expect(task.may(agency)).toBe(may);
    },
  );
});

describe('43.3(g), 43.7, part 43 appendix A(c): preventive maintenance by pilots', () => {
  test('(c)(24) batteries: a private pilot on his own aircraft, a sport pilot on a light-sport one', () => {
    const may = (agency: Agency, certificate: 'standard' | 'light-sport') =>
      batteryReplacement(certificate).may(agency);
    expect([may(pilot, 'standard'), may(sportPilot, 'standard'), may(sportPilot, 'light-sport')]).toEqual([
      yes,
      no,
      yes,
    ]);
  });

  test('(c)(31) tray-mounted navigation and communication, never transponder or autopilot; whether it has a tray is not recorded', () => {
    const may = (code: 'com' | 'gnss' | 'transponder' | 'autopilot') => release(new Set([code]), 'standard').may(pilot);
    expect([may('com'), may('gnss'), may('transponder'), may('autopilot')]).toEqual([open, open, no, no]);
  });
});
