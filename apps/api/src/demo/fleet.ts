import { emptyWeightAfter } from '@tallywing/rules';
import type { ChangeOf } from '@tallywing/rules';
import type { History } from './history.js';
import type { Spec } from './life.js';
import { nextDay } from './life.js';
import { inspector, mechanic, pilot } from './people.js';
import { altimeterRun, transponderS } from './readings.js';

type Mass = ChangeOf<'mass.revise'>['mass'];

/** The shop's fleet: a flight school, a flying club and private owners, with every kind of trouble that the rules know. */

const school = { operator: 'saltmarsh', base: 'saltmarsh', airframe: 'four', perMonth: 6400 } as const;
const club = { operator: 'coldbrook', base: 'coldbrook', airframe: 'four', perMonth: 3200 } as const;
const owner = { operator: 'ferrant', base: 'ferrant', airframe: 'four', perMonth: 800 } as const;

/** The trainer of the story: a technician takes its VFR-limited navigator out and fits one approved for vertical guidance. */
export const storyRegistration = 'TW-01Q';

const flightSchool: readonly Spec[] = [
  {
    ...school,
    registration: storyRegistration,
    made: '2004-03-09',
    panel: 'waiting',
    hours: 611_240,
    about: 'Waits for its new navigator: VFR-limited GNSS beside an indicator that could show a glide path.',
  },
  {
    ...school,
    registration: 'TW-02Q',
    made: '2006-05-22',
    panel: 'full',
    hours: 548_010,
    upkeep: { vorDays: 3 },
    about: 'All in order for IFR lessons with LPV and ILS.',
  },
  {
    ...school,
    registration: 'TW-03Q',
    made: '2006-06-18',
    panel: 'full',
    hours: 702_330,
    upkeep: { sinceHundred: 9670, vorDays: 12, nextLoaded: false },
    about: 'Few hours left before the 100-hour inspection.',
  },
  {
    ...school,
    registration: 'TW-04Q',
    made: '2005-09-01',
    panel: 'full',
    hours: 689_450,
    upkeep: { sinceHundred: 10_320 },
    about: '100-hour inspection overflown: rental yes, instruction no.',
  },
  {
    ...school,
    registration: 'TW-05Q',
    made: '2007-02-13',
    panel: 'full',
    hours: 433_900,
    upkeep: { cycle: -1 },
    about: 'Navigation data one cycle behind.',
  },
  {
    ...school,
    registration: 'TW-06Q',
    made: '2003-11-24',
    panel: 'ils',
    hours: 801_760,
    upkeep: { transponderMonths: 25 },
    about: 'Transponder test lapsed last month.',
  },
  {
    ...school,
    registration: 'TW-07Q',
    made: '2008-04-17',
    panel: 'allInOne',
    hours: 321_100,
    upkeep: { staticMonths: 25 },
    then: (history, days) => {
      amend(
        history,
        days.ago(11),
        'gps1',
        { airwaysClear: false },
        'A chart pocket was found over the intakes of the fan.',
      );
    },
    about: 'Static system and altimeter tests lapsed: visual flying only; the intakes of the navigator are covered.',
  },
  {
    ...school,
    registration: 'TW-08Q',
    made: '2002-08-30',
    panel: 'ils',
    hours: 912_480,
    upkeep: { vorDays: 20 },
    about: 'ILS trainer without satellite navigation, in order.',
  },
  {
    ...school,
    registration: 'TW-09Q',
    made: '2002-10-11',
    panel: 'ils',
    hours: 884_020,
    upkeep: { vorDays: 31 },
    about: 'VOR check one day too old.',
  },
  {
    ...school,
    registration: 'TW-10Q',
    airframe: 'two',
    made: '1978-04-04',
    panel: 'plain',
    hours: 1_204_770,
    authority: { ifr: false },
    upkeep: { annualMonths: 11 },
    about: 'Visual trainer; the annual inspection ends with the month after this one.',
  },
  {
    ...school,
    registration: 'TW-11Q',
    made: '2009-01-29',
    panel: 'shared',
    hours: 298_330,
    upkeep: { nextLoaded: false },
    about: 'Two sources on one indicator through a selector that says which one is shown.',
  },
  {
    ...school,
    registration: 'TW-12Q',
    made: '2007-07-07',
    panel: 'full',
    hours: 455_610,
    then: (history, days) => {
      const since = days.ago(2);
      history.add(
        {
          kind: 'hold.place',
          hold: {
            id: 'hold-panel',
            reason: 'Panel open for a new audio panel',
            by: 'Jory Pellam',
            from: `${since}T15:00Z`,
            until: null,
          },
        },
        since,
      );
    },
    about: 'Held: the panel is open.',
  },
];

const flyingClub: readonly Spec[] = [
  {
    ...club,
    registration: 'TW-21K',
    made: '1999-05-14',
    panel: 'lnav',
    hours: 511_800,
    then: (history, days) => {
      const lights = [
        { use: 'warning', colour: 'red' },
        { use: 'safe-operation', colour: 'amber' },
      ] as const;
      amend(
        history,
        days.ago(18),
        'ann1',
        { lights: [...lights] },
        'Lens of the approach light replaced by an amber one.',
      );
    },
    about: 'Older approved navigator: LNAV, with VOR as the other means; a light in the wrong colour.',
  },
  {
    ...club,
    registration: 'TW-22K',
    made: '2001-03-28',
    panel: 'full',
    hours: 377_220,
    without: ['annual-inspection'],
    then: (history, days) => {
      history.record('annual-inspection', ['aircraft'], days.ago(40), {
        outcome: 'approved',
        agency: inspector,
        evidence: 'reported',
        entry: null,
        note: 'The club says that it was done; the entry has not been seen.',
      });
      load(history, days.ago(40), 'Baggage', 200);
    },
    about: 'Annual reported as done, entry not seen; with a full baggage compartment it loads beyond its aft limit.',
  },
  {
    ...club,
    registration: 'TW-23K',
    made: '1998-12-03',
    panel: 'lnav',
    hours: 602_450,
    then: (history, days) => {
      raise(history, days.ago(5), 'defect-beacon', 'anticollision-lights', 'Beacon does not flash', true);
      rewire(history, days.ago(5), 'cb-landing-light', { wireAwg: 18 });
    },
    about: 'Inoperative item, nothing done about it yet; a thin wire to the landing light.',
  },
  {
    ...club,
    registration: 'TW-24K',
    airframe: 'old',
    made: '1964-06-12',
    panel: 'ils',
    hours: 733_110,
    then: (history, days) => {
      raise(history, days.ago(21), 'defect-landing-light', 'landing-light', 'Landing light does not come on', true);
      defer(history, days.ago(20), 'defect-landing-light');
    },
    about: 'Landing light deferred with all four parts done.',
  },
  {
    ...club,
    registration: 'TW-25K',
    made: '2000-09-19',
    panel: 'halfSteered',
    hours: 420_990,
    then: (history, days) => {
      const day = days.ago(6);
      history
        .add(
          {
            kind: 'work.done',
            what: 'Alternate static valve replaced',
            unitId: null,
            touched: ['static-system', 'behind-panel'],
            performed: { date: day, at: `${day}T15:00Z` },
          },
          day,
        )
        .add(
          {
            kind: 'static-system.set',
            system: { id: 'static1', name: 'Static system', lastOpened: { date: day, at: `${day}T15:00Z` } },
          },
          day,
        )
        .record('release-entry', ['aircraft'], day, { outcome: 'approved', agency: mechanic, done: at(day, '18:00') })
        .record('controls-check', ['aircraft'], day, {
          agency: mechanic,
          secondPerson: 'Idris Corley',
          done: at(day, '18:10'),
        });
    },
    about:
      'Static system opened last week, leak test not done; an autopilot without the attitude gyro that its manual asks for.',
  },
  {
    ...club,
    registration: 'TW-26K',
    made: '2003-02-02',
    panel: 'unlabelled',
    hours: 298_770,
    about: 'Two sources on one indicator and nothing to tell them apart.',
  },
  {
    ...club,
    registration: 'TW-27K',
    airframe: 'two',
    made: '1976-07-30',
    panel: 'uat',
    hours: 866_120,
    authority: { ifr: false },
    then: (history, days) => {
      const day = days.ago(12);
      portable(history, day);
      history.join(['uat1', 'TFC OUT', 'tab1', 'TFC IN'], day);
    },
    about: 'UAT below 18,000 ft, with a portable display joined to it.',
  },
];

const owners: readonly Spec[] = [
  {
    ...owner,
    registration: 'TW-31P',
    airframe: 'kit',
    made: '2018-10-05',
    panel: 'plain',
    hours: 41_230,
    authority: { ifr: false, nightVfr: false, hire: false, conditionInspectionMonths: 12 },
    about: 'Home-built: condition inspection by its operating limitations, visual flying by day.',
  },
  {
    ...owner,
    registration: 'TW-32P',
    airframe: 'light',
    made: '2016-02-20',
    panel: 'uat',
    hours: 88_400,
    authority: { ifr: false, nightVfr: false },
    upkeep: { eltMonths: 14 },
    about: 'Light-sport; emergency transmitter not inspected for more than a year.',
  },
  {
    ...owner,
    registration: 'TW-33P',
    airframe: 'twin',
    made: '2010-06-30',
    base: 'kettle',
    panel: 'touring',
    hours: 190_560,
    upkeep: { vorDays: 28, readDays: 2 },
    then: (history, days) => {
      const day = days.monthsAgo(7, 9);
      history
        .test('altimeter-test', ['alt1'], day, altimeterRun({ atFt: 12_000, byFt: 120 }), {
          outcome: 'failed',
          testedToFt: 20_000,
        })
        .test('altimeter-test', ['alt1'], nextDay(day), altimeterRun(), { testedToFt: 20_000 });
      rewire(history, days.ago(30), 'cb-gps1', { circuitsGuarded: 2 });
      history.add(
        {
          kind: 'antenna.fit',
          antenna: { id: 'ant-com2', kind: 'com', units: ['com2'], approved: true, xIn: 74, yIn: -4 },
          performed: at(days.ago(30), '15:00'),
          touched: ['nothing'],
        },
        days.ago(30),
      );
      history.record('release-entry', ['com2'], days.ago(30), {
        outcome: 'approved',
        agency: mechanic,
        done: at(days.ago(30), '18:00'),
      });
    },
    about:
      'Twin in the islands: next data cycle loaded, an altimeter that failed once and then passed; navigator and cabin lights on one breaker, second radio antenna near the satellite antenna; two ways of finding traffic switched on that exclude each other.',
  },
  {
    ...owner,
    registration: 'TW-34P',
    airframe: 'old',
    made: '1962-08-08',
    panel: 'lnav',
    hours: 512_000,
    perMonth: 300,
    aircraft: { certificate: 'standard', maxOperatingAltitudeFt: null, basis: null },
    authority: null,
    without: ['completeness', 'equipment', 'electrical', 'supplement', 'altimeter-test'],
    about: 'Taken on last season; half of its papers have not been found yet.',
  },
  {
    ...owner,
    registration: 'TW-35P',
    airframe: 'fourR',
    made: '2011-03-15',
    panel: 'displayed',
    hours: 166_080,
    upkeep: { eltBatteryLeft: -1, readDays: 38 },
    then: (history, days) => {
      const day = days.monthsAgo(3, 9);
      history.test('transponder-test', ['atc1'], day, transponderS(118), { outcome: 'passed' });
      portable(history, days.ago(9));
      history.join(['gps1', 'POS OUT', 'tab1', 'POS IN'], days.ago(9));
    },
    about:
      'Battery of the emergency transmitter expired; a transponder entered as passed with too little power; a portable display joined where the manual forbids it; an attitude display that replaces no instrument.',
  },
];

export const shopFleet: readonly Spec[] = [...flightSchool, ...flyingClub, ...owners];

const works = { operator: 'cray-hire', base: 'nethercray', airframe: 'fourR', perMonth: 2600 } as const;

/** The second organisation: small, and invisible to the first. */
export const secondFleet: readonly Spec[] = [
  { ...works, registration: 'TW-61C', made: '2009-04-21', panel: 'full', hours: 244_060, about: 'In order.' },
  {
    ...works,
    registration: 'TW-62C',
    made: '2004-12-12',
    panel: 'ils',
    hours: 391_420,
    upkeep: { annualMonths: 13 },
    about: 'Annual inspection lapsed.',
  },
  {
    ...works,
    registration: 'TW-63C',
    airframe: 'old',
    made: '1959-05-05',
    panel: 'plain',
    hours: 877_310,
    authority: { ifr: false },
    then: (history, days) => {
      const day = days.ago(40);
      removeElt(history, day);
    },
    about: 'Emergency transmitter away for repair for 40 days, placard in place.',
  },
];

function at(date: string, time: string): { date: string; at: string } {
  return { date, at: `${date}T${time}Z` };
}

function raise(history: History, day: string, id: string, subject: string, text: string, decided: boolean): void {
  history.add(
    {
      kind: 'defect.raise',
      defect: {
        id,
        kind: 'inoperative-item',
        subject,
        text,
        raised: at(day, '19:00'),
        decidedBy: decided ? mechanic : null,
        deferral: null,
      },
    },
    day,
  );
}

function defer(history: History, day: string, defectId: string): void {
  history.add(
    {
      kind: 'defect.defer',
      defectId,
      deferral: {
        route: '91.213(d)',
        notRequired: true,
        secured: true,
        placarded: true,
        recorded: true,
        noHazardBy: pilot,
        letterAboard: null,
        on: day,
        reinspectedOn: null,
      },
    },
    day,
  );
}

function removeElt(history: History, day: string): void {
  history
    .add(
      {
        kind: 'unit.remove',
        unitId: 'elt1',
        performed: at(day, '15:00'),
        reason: 'Sent away for repair',
        touched: [],
        mass: null,
      },
      day,
    )
    .add(
      {
        kind: 'placard.fit',
        placard: {
          id: 'elt-away',
          kind: 'elt-removed',
          unitId: null,
          inView: true,
          text: `ELT not installed or carried, removed ${day}`,
        },
      },
      day,
    )
    .record('elt-removal', ['aircraft'], day, {
      agency: mechanic,
      done: at(day, '18:00'),
      note: 'Make, model, serial number and reason of the removal entered.',
    })
    .record('release-entry', ['aircraft'], day, { outcome: 'approved', agency: mechanic, done: at(day, '18:10') });
  const { massLb, armIn } = fittedUnit(history, 'elt1');
  revise(history, day, (mass) => {
    const without = massLb === null || armIn === null ? [] : [{ weightLb: -massLb, armIn }];
    const after = emptyWeightAfter({ weightLb: mass.emptyWeightLb, armIn: mass.emptyArmIn }, without);
    const revised = { revisedOn: day, weighed: false, equipmentListRevisedOn: day };
    return { ...mass, ...revised, emptyWeightLb: after.weightLb, emptyArmIn: after.armIn };
  });
}

/** A portable display on a suction mount, joined to the panel by its owner's cable. */
function portable(history: History, day: string): void {
  history
    .add(
      {
        kind: 'unit.install',
        unit: {
          id: 'tab1',
          name: 'DP 8 portable display',
          typeId: history.typeId('portable'),
          functions: [],
          serial: null,
          openingId: null,
          place: 'copilot-panel',
          software: null,
          offsetIn: 24,
          options: [],
          approval: null,
          manufactured: null,
          fitted: null,
          deactivated: null,
          massLb: 0.9,
          armIn: 60,
          asBuilt: null,
          notes: 'On a suction mount; the cable is the owner’s own.',
        },
        performed: at(day, '15:00'),
        touched: [],
        mass: null,
      },
      day,
    )
    .record('release-entry', ['tab1'], nextDay(day), { outcome: 'approved', agency: mechanic });
}

/** What somebody saw of how a unit is built in; the rest stays as it was. */
function amend(
  history: History,
  day: string,
  unitId: string,
  part: Partial<NonNullable<ChangeOf<'unit.amend'>['unit']['asBuilt']>>,
  reason: string,
): void {
  for (const { change } of [...history.entries]) {
    if (change.kind !== 'unit.install' || change.unit.id !== unitId || change.unit.asBuilt === null) continue;
    const unit = { ...change.unit, fitted: change.performed, asBuilt: { ...change.unit.asBuilt, ...part } };
    history.add({ kind: 'unit.amend', unit, sameUnit: null, reason }, day);
  }
}

function rewire(
  history: History,
  day: string,
  circuitId: string,
  part: Partial<ChangeOf<'electrical.set'>['electrical']['circuits'][number]>,
): void {
  for (const { change } of [...history.entries]) {
    if (change.kind !== 'electrical.set') continue;
    const circuits = change.electrical.circuits.map((each) => (each.id === circuitId ? { ...each, ...part } : each));
    history.add({ kind: 'electrical.set', electrical: { ...change.electrical, circuits } }, day);
  }
}

/** The empty-weight record again, with more allowed at one station. */
function load(history: History, day: string, station: string, mostLb: number): void {
  revise(history, day, (mass) => {
    if (mass.envelope === null) return mass;
    const stations = mass.envelope.stations.map((each) => (each.name === station ? { ...each, mostLb } : each));
    return { ...mass, envelope: { ...mass.envelope, stations } };
  });
}

/** The last empty-weight record with what is different now. */
function revise(history: History, day: string, next: (mass: Mass) => Mass): void {
  const last = history.entries.map(({ change }) => change).findLast((change) => change.kind === 'mass.revise');
  if (last) history.add({ kind: 'mass.revise', mass: next(last.mass) }, day);
}

function fittedUnit(history: History, id: string): ChangeOf<'unit.install'>['unit'] {
  for (const { change } of history.entries)
    if (change.kind === 'unit.install' && change.unit.id === id) return change.unit;
  throw new Error(`No unit ${id} was fitted.`);
}
