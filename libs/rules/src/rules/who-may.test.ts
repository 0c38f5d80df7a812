import { describe, expect, it } from 'vitest';
import { unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Agency, Rating } from '../dossier/common.js';
import { factsOf } from '../graph/facts.js';
import type { Task } from './who-may.js';
import { batteryReplacement, release, releaseOf, tasks } from './who-may.js';

const agency = (kind: Agency['kind'], ...ratings: readonly Rating[]): Agency => ({
  kind,
  name: 'Somebody',
  certificate: 'X-0009',
  ratings,
});
const unrated = (kind: Agency['kind']): Agency => ({ ...agency(kind), ratings: null });
const manufacturer = unrated('manufacturer');
const carrier = unrated('carrier');
const inspector = agency('mechanic', 'airframe', 'powerplant', 'inspection-authorization');
const airframeAlone = agency('mechanic', 'airframe');
const powerplantAlone = agency('mechanic', 'powerplant');
const both = agency('mechanic', 'airframe', 'powerplant');
/** Recorded without the ratings that it presupposes (65.91(c)). */
const authorizationAlone = agency('mechanic', 'inspection-authorization');
const station = (...ratings: readonly Rating[]) => agency('repair-station', ...ratings);
const lightSport = agency('repairman', 'light-sport-maintenance');
const builder = agency('repairman');
const privatePilot = agency('pilot', 'private-pilot');
const sportPilot = agency('pilot', 'sport-pilot');

type Row = readonly [string, Agency, boolean | null];
const table: readonly (readonly [Task, readonly Row[]])[] = [
  // 43.7: an inspection authorization, a rated station, the manufacturer.
  [
    tasks.annualInspection,
    [
      ['the manufacturer', manufacturer, true],
      ['a carrier', carrier, false],
      ['a station for airframes', station('station-airframe'), true],
      ['a station for radio', station('radio-3'), false],
      ['a station of unrecorded ratings', unrated('repair-station'), null],
      ['an inspector', inspector, true],
      ['a mechanic', both, false],
      ['a mechanic of unrecorded ratings', unrated('mechanic'), null],
      ['a repairman', lightSport, false],
      ['a pilot', privatePilot, false],
    ],
  ],
  [tasks.progressive, [['a mechanic', both, false]]],
  // 65.85 and 65.87: the airframe and the powerplant, so both ratings.
  [
    tasks.hundredHour,
    [
      ['the manufacturer', manufacturer, true],
      ['a station for airframes', station('station-airframe'), true],
      ['a station for radio', station('radio-3'), false],
      ['a mechanic with both ratings', both, true],
      ['a mechanic with one', airframeAlone, false],
      ['a mechanic with the other', powerplantAlone, false],
      ['one whose authorization alone is recorded', authorizationAlone, true],
      ['a mechanic of unrecorded ratings', unrated('mechanic'), null],
      ['a repairman', lightSport, false],
      ['a pilot', privatePilot, false],
      ['a pilot of unrecorded ratings', unrated('pilot'), false],
    ],
  ],
  [
    tasks.lightSportInspection,
    [
      ['a repairman with the maintenance rating', lightSport, true],
      ['a repairman without', builder, false],
      ['a mechanic with both ratings', both, true],
      ['a pilot', privatePilot, false],
    ],
  ],
  [
    tasks.experimentalInspection,
    [
      ['a repairman, of whom it is not recorded which aircraft he built', builder, null],
      ['a mechanic with both ratings', both, true],
      ['a mechanic with one', airframeAlone, false],
    ],
  ],
  // 91.411(b): the manufacturer, a station with an instrument class I, appropriate airframe or limited rating.
  [
    tasks.altimeterTest,
    [
      ['the manufacturer', manufacturer, true],
      ['a station for instruments', station('instrument-1'), true],
      ['a station limited to the test', station('limited-for-test'), true],
      ['a station for airframes', station('station-airframe'), true],
      ['a station limited to some instruments', station('instrument-limited'), null],
      ['a station for radio', station('radio-3'), false],
      ['a station of unrecorded ratings', unrated('repair-station'), null],
      ['an inspector', inspector, false],
      ['a carrier', carrier, false],
      ['a pilot', privatePilot, false],
    ],
  ],
  // 91.411(b)(3): a mechanic with an airframe rating, static pressure system tests alone.
  [
    tasks.staticTest,
    [
      ['a mechanic for airframes', airframeAlone, true],
      ['a mechanic for powerplants', powerplantAlone, false],
      ['one whose authorization alone is recorded', authorizationAlone, true],
      ['a repairman', lightSport, false],
    ],
  ],
  // 91.413(c): a station with a radio class III or limited rating, a carrier; the manufacturer for what it installed.
  [
    tasks.transponderTest,
    [
      ['a station for radar', station('radio-3'), true],
      ['a station limited to the test', station('limited-for-test'), true],
      ['a station limited to some radio', station('radio-limited'), null],
      ['a station for instruments', station('instrument-1'), false],
      ['a carrier', carrier, true],
      ['the manufacturer, of whom it is not recorded what it installed', manufacturer, null],
      ['an inspector', inspector, false],
      ['a mechanic of unrecorded ratings', unrated('mechanic'), false],
    ],
  ],
  [
    tasks.correspondence,
    [
      ['a station for radar', station('radio-3'), true],
      ['a station for instruments', station('instrument-1'), true],
      ['a station for communication', station('radio-1'), false],
      ['a station limited to some radio', station('radio-limited'), null],
      ['a station limited to some instruments', station('instrument-limited'), null],
      ['an inspector', inspector, false],
    ],
  ],
  [
    tasks.maintenance,
    [
      ['the manufacturer', manufacturer, true],
      ['a carrier', carrier, true],
      ['a mechanic for airframes', airframeAlone, true],
      ['one whose authorization alone is recorded', authorizationAlone, true],
      ['a mechanic for powerplants', powerplantAlone, false],
      ['a station with any rating', station('radio-1'), true],
      ['a station without', station(), false],
      ['a station of unrecorded ratings', unrated('repair-station'), null],
      ['a repairman', lightSport, false],
      ['a pilot', privatePilot, false],
    ],
  ],
  [
    tasks.pilotCheck,
    [
      ['a private pilot', privatePilot, true],
      ['a sport pilot', sportPilot, false],
      ['a pilot of unrecorded ratings', unrated('pilot'), null],
    ],
  ],
  [tasks.dataVerification, [['a private pilot', privatePilot, true]]],
  // Part 43 appendix A(c)(31): tray-mounted front-panel units, and whether one is, is not recorded.
  [
    release(new Set(['com', 'gs-receiver'] as const), 'standard'),
    [
      ['a private pilot', privatePilot, null],
      ['a sport pilot', sportPilot, null],
      ['a person with neither certificate', agency('pilot'), false],
      ['a mechanic for airframes', airframeAlone, true],
      ['a repairman, the aircraft being no light-sport one', lightSport, false],
    ],
  ],
  [release(new Set(['com', 'transponder'] as const), 'standard'), [['a private pilot', privatePilot, false]]],
  [release(null, 'standard'), [['a private pilot, the unit being gone', privatePilot, null]]],
  [release(null, 'light-sport'), [['a repairman with the maintenance rating', lightSport, true]]],
  [release(null, 'light-sport'), [['a repairman without', builder, false]]],
  [release(null, null), [['a repairman, the certificate not recorded', lightSport, null]]],
  // 43.3(g): a sport pilot on a light-sport aircraft.
  [
    batteryReplacement('standard'),
    [
      ['a private pilot', privatePilot, true],
      ['a sport pilot', sportPilot, false],
      ['a pilot of unrecorded ratings', unrated('pilot'), null],
      ['a mechanic for airframes', airframeAlone, true],
    ],
  ],
  [batteryReplacement('light-sport'), [['a sport pilot', sportPilot, true]]],
  [batteryReplacement('light-sport'), [['a person with neither certificate', agency('pilot'), false]]],
  [batteryReplacement(null), [['a sport pilot, the certificate not recorded', sportPilot, null]]],
  [batteryReplacement(null), [['a person with neither certificate', agency('pilot'), false]]],
];

for (const [task, rows] of table)
  describe(`${task.id} by ${task.source.paragraph}`, () => {
    it.each(rows)('%s', (_, who, expected) => {
      expect(task.may(who)).toBe(expected);
    });
  });

// Of several units the strictest: a transponder is never a pilot's. Of one that is gone nobody knows what it was.
it.each<[readonly string[], boolean | null]>([
  [['com1'], null],
  [['com1', 'gps1'], null],
  [['com1', 'xp1'], false],
  [['xp1', 'gone'], null],
])('work on %j by a private pilot: %s', (subjects, expected) => {
  const units = [
    unitOf({ id: 'com1', functions: ['com'] }),
    unitOf({ id: 'gps1', functions: ['gnss'] }),
    unitOf({ id: 'xp1', functions: ['transponder'] }),
  ];
  const facts = factsOf(dossierOf({ configuration: { units } }), catalogueOf());
  expect(releaseOf(facts, subjects).may(privatePilot)).toBe(expected);
});

it('each task has its name and source', () => {
  for (const { id, source } of [...Object.values(tasks), release(null, null), batteryReplacement(null)]) {
    expect(id).toMatch(/^[a-z-]+$/);
    expect(source.paragraph).not.toBe('');
  }
  expect(release(null, null).id).toBe('release-entry');
  expect(batteryReplacement(null).id).toBe('elt-battery');
});
