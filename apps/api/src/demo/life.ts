import type { ChangeOf } from '@tallywing/rules';
import type { AirframeKey, Aircraft, BaseKey } from './airframes.js';
import { airframes, bases } from './airframes.js';
import { electricalOf, envelopeOf } from './build.js';
import { demoTypes } from './catalogue/all.js';
import type { Days } from './days.js';
import type { Dated } from './history.js';
import { History } from './history.js';
import type { PanelName } from './panels.js';
import { panels } from './panels.js';
import { inspector, mechanic, pilot, repairman, station } from './people.js';
import {
  altimeterRun,
  compassRun,
  correspondence,
  staticLeak,
  transponderC,
  transponderS,
  vorBySignal,
} from './readings.js';

/** How an aircraft was looked after, in days and months before today. What is left out is in good order. */
export interface Upkeep {
  readonly annualMonths: number;
  /** Hundredths of an hour flown since the last 100-hour inspection. */
  readonly sinceHundred: number;
  readonly staticMonths: number;
  readonly transponderMonths: number;
  readonly eltMonths: number;
  /** Months until the battery of the emergency transmitter expires; negative: ago. */
  readonly eltBatteryLeft: number;
  readonly vorDays: number;
  /** Data cycle loaded: 0 the one in force, -1 the one before. */
  readonly cycle: number;
  /** Whether the next cycle is loaded as soon as it can be had. */
  readonly nextLoaded: boolean;
  readonly readDays: number;
}

const goodOrder: Upkeep = {
  annualMonths: 5,
  sinceHundred: 4200,
  staticMonths: 9,
  transponderMonths: 9,
  eltMonths: 5,
  eltBatteryLeft: 21,
  vorDays: 6,
  cycle: 0,
  nextLoaded: true,
  readDays: 1,
};

type RecordKind = ChangeOf<'record.add'>['record']['kind'];

export interface Spec {
  readonly registration: string;
  readonly airframe: AirframeKey;
  readonly made: string;
  readonly operator: string | null;
  readonly base: BaseKey;
  readonly panel: PanelName;
  /** Time in service now and a month's use, hundredths of an hour. */
  readonly hours: number;
  readonly perMonth: number;
  readonly upkeep?: Partial<Upkeep>;
  readonly authority?: Partial<ChangeOf<'authority.set'>['authority']> | null;
  readonly aircraft?: Partial<Aircraft>;
  /** Kinds of entry, ids of joints' units or whole steps that are left out. */
  readonly without?: readonly (RecordKind | 'completeness' | 'supplement' | 'equipment' | 'electrical' | 'placards')[];
  /** What else happened. */
  readonly then?: (history: History, days: Days) => void;
  /** In one line, for the person who reads the demo. */
  readonly about: string;
}

export interface Lived {
  readonly spec: Spec;
  readonly aircraftId: string;
  readonly entries: readonly Dated[];
}

/** Days before it takes effect that a provider gives out the next cycle. */
const NEXT_OUT_DAYS = 14;

/** Days before today on which the shop took the aircraft on. */
export const INTAKE_DAYS = 100;

export function live(spec: Spec, days: Days): Lived {
  const history = new History(days, days.ago(INTAKE_DAYS));
  const upkeep = { ...goodOrder, ...spec.upkeep };
  const without = new Set(spec.without ?? []);
  describe(history, spec);
  fit(history, spec, without.has('supplement'));
  if (!without.has('electrical')) wire(history, spec);
  if (!without.has('equipment')) equip(history, spec);
  const kept = new History(days, history.intake);
  look(kept, spec, upkeep);
  history.entries.push(
    ...kept.entries.filter(({ change }) => change.kind !== 'record.add' || !without.has(change.record.kind)),
  );
  directives(history, spec);
  limits(history, spec);
  if (!without.has('completeness')) complete(history);
  fly(history, spec, upkeep);
  spec.then?.(history, days);
  return { spec, aircraftId: spec.registration.toLowerCase(), entries: history.inOrder() };
}

/** When the present panel went in. */
export function fitDay(spec: Spec, days: Days): string {
  const year = Math.max(Number(spec.made.slice(0, 4)) + 1, Number(days.today.slice(0, 4)) - 3);
  return `${year}-05-14`;
}

const round = { place: 'pilot-panel', widthIn: 3.15, heightIn: 3.15, depthIn: 7, eyeDistanceIn: 28 } as const;
const wide = { widthIn: 6.3, eyeDistanceIn: 30 } as const;
/** The panel has the same openings in every airframe. */
const openings: readonly ChangeOf<'opening.set'>['opening'][] = [
  { id: 'alt', ...round, rightOfEyeIn: 3.5, belowEyeIn: 2 },
  { id: 'att', ...round, rightOfEyeIn: 0, belowEyeIn: 2 },
  { id: 'dir', ...round, rightOfEyeIn: 0, belowEyeIn: 5.6 },
  { id: 'cdi1', ...round, rightOfEyeIn: 5.5, belowEyeIn: 1 },
  { id: 'cdi2', ...round, rightOfEyeIn: 5.5, belowEyeIn: 4.6 },
  { id: 'ann', ...round, widthIn: 2.4, heightIn: 1.2, rightOfEyeIn: 2, belowEyeIn: -1.5 },
  { id: 'stack', place: 'centre-stack', ...wide, heightIn: 11.5, depthIn: 12.5, rightOfEyeIn: 11, belowEyeIn: 4 },
  { id: 'right', place: 'copilot-panel', ...wide, heightIn: 4, depthIn: 9, rightOfEyeIn: 19, belowEyeIn: 4 },
];

function describe(history: History, spec: Spec): void {
  const { days } = history;
  const light = airframes[spec.airframe].certificate !== 'standard';
  history
    .add({
      kind: 'aircraft.add',
      aircraft: {
        registration: spec.registration,
        serial: `${spec.airframe.toUpperCase()}-${spec.registration.slice(3)}`,
        manufactured: spec.made,
        base: bases[spec.base],
        operatorId: spec.operator,
        program: null,
        notWanted: [],
        ...airframes[spec.airframe],
        ...spec.aircraft,
      },
    })
    .add({
      kind: 'meter.define',
      definition: { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
      standsForTimeInService: true,
    })
    .add({
      kind: 'meter.define',
      definition: { id: 'hour-meter', name: 'Hour meter', kind: 'hour-meter', perFlightHour: 1180, offset: 0 },
      standsForTimeInService: false,
    })
    .add({ kind: 'utilisation.set', utilisation: { perMonth: spec.perMonth, readingGoodForDays: 31 } })
    .add({
      kind: 'static-system.set',
      system: {
        id: 'static1',
        name: 'Static system',
        lastOpened: { date: fitDay(spec, days), at: `${fitDay(spec, days)}T15:00Z` },
      },
    });
  if (spec.authority !== null)
    history.add({
      kind: 'authority.set',
      authority: {
        dayVfr: true,
        nightVfr: true,
        ifr: true,
        hire: true,
        document: {
          title: light ? 'Operating limitations' : 'Flight manual, kinds of operation',
          revision: '4',
          date: null,
        },
        conditionInspectionMonths: null,
        ...spec.authority,
      },
    });
  for (const opening of openings) history.add({ kind: 'opening.set', opening });
}

/** The panel as it is: equipment of the type design since the aircraft was made, the rest since the last refit. */
function fit(history: History, spec: Spec, noSupplement: boolean): void {
  const { days } = history;
  const panel = panels[spec.panel];
  const day = fitDay(spec, days);
  const after = nextDay(day);
  const original = nextDay(spec.made);
  for (const each of panel.units) history.install(each, each.basis === 'type-certificate' ? original : day);
  for (const each of panel.joints) history.join(each, day);
  for (const each of panel.antennas) history.antenna(each, day);
  if (!noSupplement) for (const each of panel.supplements) history.supplement(each, day);
  const ids = panel.units.map(({ id }) => id);
  const satellite = panel.units.filter(({ type }) => demoTypes[type].functions.includes('gnss')).map(({ id }) => id);
  history
    .record('release-entry', [...ids, 'aircraft'], after, { outcome: 'approved', agency: station })
    .record('controls-check', ['aircraft'], after, { agency: station, secondPerson: 'Idris Corley' })
    .test('static-leak-test', ['static1', 'aircraft'], after, staticLeak(35))
    .test('altitude-correspondence-test', ['aircraft', 'enc1', 'atc1'], after, correspondence(0))
    .test('compass-swing', ['aircraft'], after, compassRun());
  for (const unit of satellite) {
    history.test('gnss-function-check', [unit], after, {});
    history.test('vhf-interference-check', [unit], after, {});
    const vfrOnly = panel.units.some(({ id, type }) => id === unit && type === 'navigatorVfr');
    if (vfrOnly && !spec.without?.includes('placards'))
      history.add(
        {
          kind: 'placard.fit',
          placard: {
            id: `vfr-${unit}`,
            kind: 'gnss-vfr-only',
            unitId: unit,
            inView: true,
            text: 'GNSS limited to VFR use only',
          },
        },
        day,
      );
  }
  if (panel.units.some(({ type }) => type === 'transponderEs' || type === 'uat'))
    history.test('ads-b-report', ['aircraft'], after, {});
  history.add(
    {
      kind: 'mass.revise',
      mass: {
        emptyWeightLb: Math.round((airframes[spec.airframe].maxWeightLb ?? 2000) * 0.62),
        emptyArmIn: 38.4,
        revisedOn: after,
        weighed: false,
        macIn: 58.2,
        envelope: envelopeOf(spec.airframe),
        equipmentListRevisedOn: after,
        changesSince: [],
      },
    },
    day,
  );
}

function wire(history: History, spec: Spec): void {
  history.add({ kind: 'electrical.set', electrical: electricalOf(panels[spec.panel]) });
}

const fittedItems = [
  'airspeed-indicator',
  'altimeter',
  'magnetic-direction-indicator',
  'tachometer',
  'oil-pressure',
  'oil-temperature',
  'fuel-quantity',
  'anticollision-lights',
  'safety-belts',
  'shoulder-harness',
  'position-lights',
  'landing-light',
  'electrical-source',
  'spare-fuses',
  'rate-of-turn',
  'slip-skid',
  'sensitive-altimeter',
  'clock',
  'generator',
  'pitch-and-bank',
  'direction-gyro',
] as const;
const absentItems = ['flotation-gear', 'pyrotechnic-device', 'third-attitude'] as const;

/** Items that a unit makes up, by its function. */
const madeUpBy = {
  altimeter: 'altimeter',
  'sensitive-altimeter': 'altimeter',
  'pitch-and-bank': 'attitude',
  'direction-gyro': 'direction',
  'dme-or-rnav': 'dme',
} as const;
const isMadeUp = (item: string): item is keyof typeof madeUpBy => item in madeUpBy;

function equip(history: History, spec: Spec): void {
  const seen = { asOf: history.intake, by: 'Jory Pellam' };
  const frame = { ...airframes[spec.airframe], ...spec.aircraft };
  const units = panels[spec.panel].units;
  const unitOf = (item: keyof typeof madeUpBy) =>
    units.find(({ type }) => demoTypes[type].functions.includes(madeUpBy[item]))?.id ?? null;
  const distance = unitOf('dme-or-rnav');
  const state = (yes: boolean | null) => (yes ? ('fitted' as const) : ('not-required' as const));
  history.add({
    kind: 'equipment.state',
    items: [
      ...fittedItems.map((item) => ({
        item,
        state: 'fitted' as const,
        unitId: isMadeUp(item) ? unitOf(item) : null,
        seen,
      })),
      ...absentItems.map((item) => ({ item, state: 'absent' as const, unitId: null, seen })),
      { item: 'dme-or-rnav', state: distance === null ? 'absent' : 'fitted', unitId: distance, seen },
      { item: 'gear-position', state: state(frame.retractableGear), unitId: null, seen },
      { item: 'coolant-temperature', state: state(frame.liquidCooled), unitId: null, seen },
      { item: 'manifold-pressure', state: state(frame.altitudeEngine), unitId: null, seen },
    ],
  });
}

/** Inspections and tests, the last of each kind and some before it. */
function look(history: History, spec: Spec, upkeep: Upkeep): void {
  const { days } = history;
  const panel = panels[spec.panel];
  const certificate = spec.aircraft?.certificate ?? airframes[spec.airframe].certificate;
  const at = (back: number) => [{ meter: 'tach', value: Math.max(0, spec.hours - back) }];
  for (const earlier of [12, 0]) {
    const date = days.monthsAgo(upkeep.annualMonths + earlier, 17);
    const meters = at(upkeep.sinceHundred + earlier * spec.perMonth);
    if (certificate === 'standard')
      history.record('annual-inspection', ['aircraft'], date, { outcome: 'approved', agency: inspector, meters });
    else
      history.record('condition-inspection', ['aircraft'], date, {
        outcome: 'approved',
        agency: certificate === 'light-sport' ? repairman : mechanic,
        meters,
      });
    history.test('elt-inspection', ['elt1'], days.monthsAgo(upkeep.eltMonths + earlier, 17), {}, { agency: inspector });
  }
  for (const back of [10_000, 0]) {
    const since = upkeep.sinceHundred + back;
    const ago = Math.max(1, Math.round((since / Math.max(spec.perMonth, 1)) * 30));
    history.record('hundred-hour-inspection', ['aircraft'], days.ago(ago), {
      outcome: 'approved',
      agency: inspector,
      meters: at(since),
    });
  }
  history.record('elt-battery', ['elt1'], days.monthsAgo(14, 17), {
    expires: days.monthsAgo(-upkeep.eltBatteryLeft, 28),
    agency: inspector,
  });
  const statics = days.monthsAgo(upkeep.staticMonths, 9);
  history
    .test('static-system-test', ['static1'], statics, staticLeak(30), { testedToFt: 20_000 })
    .test('static-leak-test', ['static1', 'aircraft'], statics, staticLeak(30))
    .test('altimeter-test', ['alt1'], statics, altimeterRun(), { testedToFt: 20_000 })
    .test('altitude-reporting-test', ['enc1', 'atc1'], statics, correspondence(0), { testedToFt: 20_000 })
    .test('altitude-correspondence-test', ['aircraft', 'enc1', 'atc1'], statics, correspondence(0));
  const modeS = panel.units.some(({ type }) => type === 'transponderEs');
  history.test(
    'transponder-test',
    ['atc1'],
    days.monthsAgo(upkeep.transponderMonths, 9),
    modeS ? transponderS() : transponderC(),
  );
  for (const unit of panel.units.filter(({ type }) => demoTypes[type].functions.includes('vor-receiver')))
    for (const earlier of [84, 56, 28, 0])
      history.record('vor-check', [unit.id], days.ago(upkeep.vorDays + earlier), {
        agency: pilot,
        place: bases[spec.base].name,
        readings: vorBySignal(earlier === 28 ? -2 : 1),
      });
}

/** One life-limited part by its limitations section, and one item that the shop set for itself. */
function limits(history: History, spec: Spec): void {
  if (airframes[spec.airframe].certificate !== 'standard') return;
  const { days } = history;
  const document = { title: 'Airworthiness limitations of the type', revision: 'C', date: null };
  history
    .add({
      kind: 'life-limit.set',
      limit: {
        id: 'fuel-hose',
        name: 'Fuel hose ahead of the firewall',
        serial: `FH-${spec.registration.slice(3)}`,
        subject: 'fuel-hose',
        mandatory: true,
        document,
        life: null,
        retireBy: { by: 'date', date: days.ago(-(spec.registration === 'TW-27K' ? 24 : 900)), meter: null, at: null },
      },
    })
    .add({
      kind: 'recurring.set',
      item: {
        id: 'contacts',
        name: 'Clean rack contacts',
        subject: 'contacts',
        origin: 'own',
        document: null,
        parts: [{ kind: 'calendar-months', count: 24, meter: null, tolerance: null }],
        combine: 'first',
        countFrom: 'done',
        toleranceFor: 'any',
      },
    })
    .record('own-item', ['contacts'], days.monthsAgo(8, 17), { agency: mechanic });
}

function directives(history: History, spec: Spec): void {
  const { days } = history;
  const complied = (
    id: string,
    number: string,
    method: string,
    monthsAgo: number,
    again: Partial<Pick<ChangeOf<'directive.set'>['directive'], 'interval' | 'nextDue'>>,
  ) => {
    const date = days.monthsAgo(monthsAgo, 17);
    const recordId = `directive-compliance:${id}:${date}`;
    history
      .add({
        kind: 'directive.set',
        directive: {
          id,
          number,
          subject: 'aircraft',
          partNumber: null,
          serial: null,
          state: 'complied',
          reason: null,
          method,
          recurs: Object.keys(again).length > 0,
          interval: null,
          nextDue: null,
          recordId,
          ...again,
        },
      })
      .record('directive-compliance', [id], date, { agency: inspector });
  };
  complied('ad-seat-rails', 'TW-19-04', 'Inspection by paragraph (c), every 12 calendar months', 5, {
    interval: {
      parts: [{ kind: 'calendar-months', count: 12, meter: null, tolerance: null }],
      combine: 'first',
      countFrom: 'done',
      toleranceFor: 'none',
    },
  });
  complied('ad-magneto', 'TW-21-08', 'Inspection by paragraph (a), repeat by date or hours', 5, {
    nextDue: { by: 'first', date: days.ago(-330), meter: 'tach', at: spec.hours + 21_000 },
  });
  complied('ad-fuel-drain', 'TW-22-11', 'Replaced by paragraph (b), once', 30, {});
  history.add({
    kind: 'directive.set',
    directive: {
      id: 'ad-spinner',
      number: 'TW-23-02',
      subject: 'aircraft',
      partNumber: null,
      serial: null,
      state: 'not-applicable',
      reason: `Spinner of another part number fitted to ${airframes[spec.airframe].model}`,
      method: null,
      recurs: null,
      interval: null,
      nextDue: null,
      recordId: null,
    },
  });
}

function complete(history: History): void {
  const stated = { asOf: history.intake, by: 'Maud Wendle' };
  const lists = ['equipment', 'links', 'directives', 'defects', 'recurring', 'life-limits', 'placards'] as const;
  history.add({ kind: 'completeness.state', lists: lists.map((list) => ({ list, stated })) });
}

/** Meter readings and data loads, as they came in. */
function fly(history: History, spec: Spec, upkeep: Upkeep): void {
  const { days } = history;
  for (const ago of new Set([INTAKE_DAYS, 84, 63, 42, 28, 14, 7, upkeep.readDays])) {
    if (ago < upkeep.readDays) continue;
    const date = days.ago(ago);
    const flown = Math.round(((ago - upkeep.readDays) / 30) * spec.perMonth);
    for (const [meter, rate] of [
      ['tach', 1],
      ['hour-meter', 1.18],
    ] as const)
      history.add(
        {
          kind: 'meter.read',
          meter,
          dial: Math.round(Math.max(0, spec.hours - flown) * rate),
          asOf: `${date}T20:00Z`,
          by: 'Ansel Brook',
        },
        date,
      );
  }
  for (const unit of panels[spec.panel].units) {
    const data = demoTypes[unit.type].databases.find(({ kind }) => kind === 'navigation');
    if (!data) continue;
    for (const back of [-2, -1, 0]) {
      const cycle = days.cycle(upkeep.cycle + back);
      history.load(unit.id, cycle, 'this', cycle.effective.slice(0, 10));
    }
    const next = days.cycle(1);
    if (
      data.holdsNext &&
      upkeep.nextLoaded &&
      upkeep.cycle === 0 &&
      next.effective.slice(0, 10) <= days.ago(-NEXT_OUT_DAYS)
    )
      history.load(unit.id, next, 'next', days.ago(1));
  }
}

export function nextDay(date: string): string {
  const next = new Date(`${date}T00:00:00Z`);
  next.setUTCDate(next.getUTCDate() + 1);
  return next.toISOString().slice(0, 10);
}
