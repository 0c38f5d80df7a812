import { perfectAltimeter, goodModeS } from './sample-readings.js';
import type { EquipmentType } from '../src/catalogue/type.js';
import type { Catalogue } from '../src/catalogue/type.js';
import type { EquipmentItem } from '../src/dossier/aircraft.js';
import { equipmentItem } from '../src/dossier/aircraft.js';
import type { Dossier } from '../src/dossier/dossier.js';
import type { InstalledUnit } from '../src/dossier/installation.js';
import { loadCondition } from '../src/dossier/installation.js';
import { listName } from '../src/dossier/status.js';
import type { RecordHead } from '../src/dossier/status.js';
import {
  approvalOf,
  circuitOf,
  inspector,
  linkOf,
  mechanic,
  pilot,
  radioStation,
  readingsOf,
  recordOf,
  typeOf,
  unitOf,
} from './builders.js';
import { catalogueOf } from './changes.js';
import type { Part } from './dossiers.js';
import { dossierOf } from './dossiers.js';

/** A day on which everything of the trainer is in order. */
export const goodDay = '2026-03-16T16:00Z';

const view = {
  approvedPlaces: ['pilot-panel', 'centre-stack'],
  maxHorizontalDeg: 35,
  maxOffsetIn: null,
  document: 'Installation manual',
} as const;
const passive = { at14V: 0, at28V: 0 } as const;
const manual = (id: string) => ({ document: `Installation manual ${id}`, revision: 'B' });
const analog = (
  name: string,
  signal: 'lateral-deviation' | 'vertical-deviation' | 'integrity-flag',
  direction: 'in' | 'out',
  requiredFor: EquipmentType['functions'] = [],
) => ({ name, signal, direction, standard: 'analog', speed: null, requiredFor }) as const;

/** Types of the trainer: a navigator with vertical guidance, a VHF navigation and communication set, an indicator, a Mode S unit with ADS-B, encoder, altimeter, emergency transmitter. */
export const trainerTypes = {
  navigator: typeOf({
    id: 'nx5',
    functions: ['gnss', 'integrity-annunciation', 'approach-annunciation', 'source-annunciation'],
    authorisations: [{ tso: 'C146d', class: 'Gamma-3' }],
    bezel: { widthIn: 6.25, heightIn: 2, depthIn: 10 },
    massLb: 5.2,
    drawA: { at14V: 2.2, at28V: 1.2 },
    supplyV: { least: 11, most: 33 },
    cooling: { by: 'own-fan', clearanceIn: 0.25, document: 'Installation manual nx5' },
    databases: [{ kind: 'navigation', holdsNext: true }],
    view,
    ports: [
      analog('P1-LAT', 'lateral-deviation', 'out', ['gnss']),
      analog('P1-VERT', 'vertical-deviation', 'out'),
      { name: 'P2-POS', signal: 'position', direction: 'out', standard: 'rs-232', speed: 9600, requiredFor: [] },
    ],
    pairs: [
      { family: 'di2', signals: ['lateral-deviation', 'vertical-deviation'], software: null, ...manual('nx5') },
      { family: 'ms4', signals: ['position'], software: null, ...manual('nx5') },
    ],
  }),
  navCom: typeOf({
    id: 'vc1',
    functions: ['com', 'vor-receiver', 'loc-receiver', 'gs-receiver'],
    bezel: { widthIn: 6.25, heightIn: 1.6, depthIn: 10.5 },
    massLb: 4.1,
    drawA: { at14V: 3.4, at28V: 1.8 },
    cooling: { by: 'still-air', clearanceIn: 0.2, document: 'Installation manual vc1' },
    view,
    ports: [analog('LAT', 'lateral-deviation', 'out'), analog('VERT', 'vertical-deviation', 'out')],
    pairs: [{ family: 'di1', signals: ['lateral-deviation', 'vertical-deviation'], software: null, ...manual('vc1') }],
  }),
  indicator: typeOf({
    id: 'di2',
    functions: ['lateral-deviation', 'vertical-deviation', 'source-annunciation'],
    drawA: passive,
    view,
    ports: [analog('LAT', 'lateral-deviation', 'in'), analog('VERT', 'vertical-deviation', 'in')],
  }),
  secondIndicator: typeOf({
    id: 'di1',
    functions: ['lateral-deviation', 'vertical-deviation'],
    drawA: passive,
    view,
    ports: [analog('LAT', 'lateral-deviation', 'in'), analog('VERT', 'vertical-deviation', 'in')],
  }),
  transponder: typeOf({
    id: 'ms4',
    functions: ['transponder', 'ads-b-out-1090'],
    authorisations: [
      { tso: 'C112e', class: '1' },
      { tso: 'C166b', class: 'B1S' },
    ],
    bezel: { widthIn: 6.25, heightIn: 1.6, depthIn: 10 },
    massLb: 3,
    drawA: { at14V: 1.9, at28V: 1 },
    cooling: { by: 'still-air', clearanceIn: 0.2, document: 'Installation manual ms4' },
    view,
    ports: [
      {
        name: 'ALT',
        signal: 'altitude-serial',
        direction: 'in',
        standard: 'rs-232',
        speed: 9600,
        requiredFor: ['transponder'],
      },
      {
        name: 'POS',
        signal: 'position',
        direction: 'in',
        standard: 'rs-232',
        speed: 9600,
        requiredFor: ['ads-b-out-1090'],
      },
    ],
    pairs: [{ family: 'en1', signals: ['altitude-serial'], software: null, ...manual('ms4') }],
  }),
  encoder: typeOf({
    id: 'en1',
    functions: ['altitude-reporting'],
    drawA: { at14V: 0.2, at28V: 0.1 },
    cooling: { by: 'still-air', clearanceIn: null, document: 'Installation manual en1' },
    ports: [
      { name: 'OUT', signal: 'altitude-serial', direction: 'out', standard: 'rs-232', speed: 9600, requiredFor: [] },
    ],
  }),
  altimeter: typeOf({ id: 'al3', functions: ['altimeter'], drawA: passive, view }),
  locator: typeOf({
    id: 'el4',
    functions: ['elt'],
    authorisations: [{ tso: 'C126b', class: null }],
    drawA: passive,
  }),
} as const;

export const trainerCatalogue: Catalogue = catalogueOf(...Object.values(trainerTypes));

const approved = approvalOf({
  basis: 'stc-model-list',
  permission: true,
  modelListed: true,
  grants: ['com', 'nav-vor', 'approach-vor', 'approach-loc', 'approach-ils', 'altitude-reporting', 'ads-b-out'],
});
const approvedGnss = approvalOf({
  basis: 'stc-model-list',
  permission: true,
  modelListed: true,
  grants: ['nav-gnss', 'approach-lnav', 'approach-lp', 'approach-lnav-vnav', 'approach-lpv'],
});

/** Mount, air and lights as somebody saw them; strong enough for any factor that an added unit of this mass may be asked for. */
const builtIn = (massLb: number): NonNullable<InstalledUnit['asBuilt']> => ({
  air: 'none',
  airwaysClear: true,
  couldStrike: false,
  bears: {
    forwardLb: massLb * 20,
    upLb: massLb * 5,
    sideLb: massLb * 5,
    downLb: massLb * 10,
    document: { title: 'Static test of mounts', revision: 'A', date: '2024-01-10' },
  },
  lights: [],
});

const notFitted: readonly EquipmentItem[] = [
  'third-attitude',
  'flotation-gear',
  'pyrotechnic-device',
  'coolant-temperature',
  'manifold-pressure',
  'gear-position',
  'dme-or-rnav',
];

const station = {
  agency: radioStation,
  instrument: { serial: 'TS-17', calibratedUntil: '2026-12-31' },
  testedToFt: 20_000,
};

/** Entries of the trainer by a short name, so that a test can take one away or change one. */
export const trainerRecords = {
  annual: recordOf({
    kind: 'annual-inspection',
    on: '2025-09-10',
    outcome: 'approved',
    agency: inspector,
    meters: [{ meter: 'tach', value: 400_000 }],
  }),
  hundred: recordOf({
    kind: 'hundred-hour-inspection',
    on: '2026-02-20',
    outcome: 'approved',
    agency: mechanic,
    meters: [{ meter: 'tach', value: 404_000 }],
  }),
  static: recordOf({
    kind: 'static-system-test',
    on: '2025-05-06',
    subjects: ['static-1'],
    ...station,
    readings: readingsOf({
      staticLeak: {
        pressurized: false,
        aboveFieldFt: 1000,
        differentialInHg: null,
        cabinEquivalentFt: null,
        lossFt: 20,
        linesClear: true,
        portHeater: 'not-fitted',
        surroundsUnchanged: true,
      },
    }),
  }),
  altimeter: recordOf({
    kind: 'altimeter-test',
    on: '2025-05-06',
    subjects: ['alt1'],
    ...station,
    readings: readingsOf({ altimeter: perfectAltimeter(20_000) }),
  }),
  reporting: recordOf({ kind: 'altitude-reporting-test', on: '2025-05-06', subjects: ['enc1'], ...station }),
  correspondence: recordOf({
    kind: 'altitude-correspondence-test',
    on: '2025-05-06',
    ...station,
    readings: readingsOf({
      correspondence: {
        points: [
          { altimeterFt: 0, reportedFt: 0 },
          { altimeterFt: 10_000, reportedFt: 10_000 },
          { altimeterFt: 20_000, reportedFt: 20_100 },
        ],
      },
    }),
  }),
  transponder: recordOf({
    kind: 'transponder-test',
    on: '2025-05-06',
    subjects: ['xpdr1'],
    ...station,
    readings: readingsOf({ transponder: goodModeS() }),
  }),
  locator: recordOf({ kind: 'elt-inspection', on: '2025-09-10', subjects: ['elt1'], agency: mechanic }),
  battery: recordOf({
    kind: 'elt-battery',
    on: '2024-09-10',
    subjects: ['elt1'],
    agency: mechanic,
    expires: '2028-09-30',
  }),
  vor: recordOf({
    kind: 'vor-check',
    on: '2026-03-01',
    subjects: ['nav1'],
    agency: pilot,
    place: 'Field, checkpoint at run-up pad',
    readings: readingsOf({
      vor: {
        method: 'ground-checkpoint',
        expectedDeg: 270,
        indicatedDeg: 272,
        otherIndicatedDeg: null,
        stationEntryMade: null,
        earlierMethodsUnavailable: null,
        independentUnits: null,
        sameStation: null,
      },
    }),
  }),
} satisfies Record<string, RecordHead>;

const feed = (from: string, to: string) => linkOf('gps1', from, 'cdi1', to);

/** Everything in order for IFR to LPV and ILS, day and night, also for instruction: nothing unrecorded that a rule asks. */
export const trainerParts: Part<Dossier> = {
  configuration: {
    aircraft: {
      certificate: 'standard',
      category: 'normal',
      basis: { code: 'car-3', amendment: null },
      manufactured: '1979-05-04',
      engine: 'reciprocating',
      engineCount: 1,
      engineDrivenElectrical: true,
      maxWeightLb: 2300,
      seats: 4,
      retractableGear: false,
      liquidCooled: false,
      altitudeEngine: false,
      maxOperatingAltitudeFt: 14_000,
    },
    authority: {
      dayVfr: true,
      nightVfr: true,
      ifr: true,
      hire: true,
      document: { title: 'Flight manual', revision: '4', date: '2011-03-01' },
      conditionInspectionMonths: null,
    },
    equipment: equipmentItem.options.map((item) => ({
      item,
      state: notFitted.includes(item) ? 'absent' : 'fitted',
      unitId: item === 'altimeter' || item === 'sensitive-altimeter' ? 'alt1' : null,
      seen: { asOf: '2025-09-10', by: 'R. Tamsin' },
    })),
    units: [
      unitOf({
        id: 'alt1',
        typeId: 'al3',
        place: 'pilot-panel',
        serial: 'A1',
        approval: approved,
        massLb: 1.5,
        asBuilt: builtIn(1.5),
        fitted: { date: '2019-01-01', at: null },
      }),
      unitOf({
        id: 'cdi1',
        typeId: 'di2',
        place: 'pilot-panel',
        serial: 'C1',
        approval: approved,
        massLb: 1.4,
        asBuilt: builtIn(1.4),
      }),
      unitOf({
        id: 'cdi2',
        typeId: 'di1',
        place: 'pilot-panel',
        serial: 'C2',
        approval: approved,
        massLb: 1.2,
        asBuilt: builtIn(1.2),
      }),
      unitOf({
        id: 'elt1',
        typeId: 'el4',
        place: 'remote',
        serial: 'E1',
        approval: approved,
        massLb: 2.1,
        asBuilt: builtIn(2.1),
      }),
      unitOf({
        id: 'enc1',
        typeId: 'en1',
        place: 'remote',
        serial: 'N1',
        approval: approved,
        massLb: 0.5,
        asBuilt: builtIn(0.5),
      }),
      unitOf({
        id: 'gps1',
        typeId: 'nx5',
        place: 'centre-stack',
        serial: 'G1',
        software: '3.1',
        approval: approvedGnss,
        massLb: 5.2,
        asBuilt: builtIn(5.2),
      }),
      unitOf({
        id: 'nav1',
        typeId: 'vc1',
        place: 'centre-stack',
        serial: 'V1',
        approval: approved,
        massLb: 4.1,
        asBuilt: builtIn(4.1),
      }),
      unitOf({
        id: 'xpdr1',
        typeId: 'ms4',
        place: 'centre-stack',
        serial: 'X1',
        approval: approved,
        massLb: 3,
        asBuilt: builtIn(3),
      }),
    ],
    links: [
      feed('P1-LAT', 'LAT'),
      feed('P1-VERT', 'VERT'),
      linkOf('nav1', 'LAT', 'cdi2', 'LAT'),
      linkOf('nav1', 'VERT', 'cdi2', 'VERT'),
      linkOf('enc1', 'OUT', 'xpdr1', 'ALT'),
      linkOf('gps1', 'P2-POS', 'xpdr1', 'POS'),
    ],
    antennas: [
      { id: 'a-com', kind: 'com', units: ['nav1'], approved: true, xIn: 96, yIn: 0 },
      { id: 'a-gps', kind: 'gnss-sbas', units: ['gps1'], approved: true, xIn: 52, yIn: 0 },
      { id: 'a-gs', kind: 'glide-slope', units: ['nav1'], approved: true, xIn: null, yIn: null },
      { id: 'a-nav', kind: 'vor-loc', units: ['nav1'], approved: true, xIn: null, yIn: null },
      { id: 'a-xpdr', kind: 'transponder', units: ['xpdr1'], approved: true, xIn: null, yIn: null },
      { id: 'a-elt', kind: 'elt', units: ['elt1'], approved: true, xIn: null, yIn: null },
    ],
    supplements: [
      {
        id: 'sup-gps1',
        units: ['gps1'],
        document: { title: 'Supplement 12', revision: 'A', date: '2024-01-10' },
        aboard: true,
        currentDataRequired: true,
        grants: ['nav-gnss', 'approach-lnav', 'approach-lp', 'approach-lnav-vnav', 'approach-lpv'],
      },
    ],
    staticSystems: [{ id: 'static-1', name: 'Static system', lastOpened: null }],
    electrical: {
      busV: 14,
      alternatorA: 60,
      batteryAh: 25,
      batteryShare: 0.75,
      loadWatch: 'none',
      circuits: [
        circuitOf({
          id: 'c-gps1',
          name: 'GPS',
          ratingA: 5,
          wireAwg: 20,
          wireLengthFt: 8,
          wireRating: 'c150',
          ampacity: { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null },
          loadA: 2.2,
          intermittent: false,
          usedIn: [...loadCondition.options],
          singleWireInOpenAir: false,
          units: ['gps1'],
          essential: true,
          circuitsGuarded: 1,
        }),
        circuitOf({
          id: 'c-nav1',
          name: 'NAV/COM',
          ratingA: 7.5,
          wireAwg: 20,
          wireLengthFt: 8,
          wireRating: 'c150',
          ampacity: { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null },
          loadA: 3.4,
          intermittent: false,
          usedIn: [...loadCondition.options],
          singleWireInOpenAir: false,
          units: ['nav1'],
          essential: true,
          circuitsGuarded: 1,
        }),
        circuitOf({
          id: 'c-xpdr1',
          name: 'XPDR',
          ratingA: 5,
          wireAwg: 20,
          wireLengthFt: 8,
          wireRating: 'c150',
          ampacity: { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null },
          loadA: 2.1,
          intermittent: false,
          usedIn: [...loadCondition.options],
          singleWireInOpenAir: false,
          units: ['enc1', 'xpdr1'],
          essential: false,
          circuitsGuarded: 1,
        }),
      ],
    },
    mass: {
      emptyWeightLb: 1425,
      emptyArmIn: 38.2,
      revisedOn: '2024-02-01',
      weighed: true,
      macIn: 58,
      envelope: {
        points: [
          { weightLb: 1500, forwardIn: 35, aftIn: 47.3 },
          { weightLb: 1950, forwardIn: 35, aftIn: 47.3 },
          { weightLb: 2300, forwardIn: 38, aftIn: 47.3 },
        ],
        stations: [
          { name: 'Oil', armIn: -14, leastLb: 15, mostLb: 15 },
          { name: 'Front seats', armIn: 37, leastLb: 170, mostLb: 340 },
          { name: 'Fuel', armIn: 48, leastLb: 75, mostLb: 240 },
          { name: 'Rear seats', armIn: 73, leastLb: 0, mostLb: 340 },
          { name: 'Baggage', armIn: 95, leastLb: 0, mostLb: 100 },
        ],
        leadingEdgeIn: 25.9,
        document: { title: 'Flight manual, section 6', revision: '4', date: null },
      },
      equipmentListRevisedOn: '2024-02-01',
      changesSince: [],
    },
  },
  status: {
    records: Object.values(trainerRecords).sort((a, b) => (a.id < b.id ? -1 : 1)),
    loads: [
      {
        unitId: 'gps1',
        database: 'navigation',
        slot: 'this',
        cycle: '2602',
        effective: '2026-02-19T09:01Z',
        expires: '2026-03-19T09:01Z',
        loaded: { date: '2026-02-19', at: null },
        fromFlightDeck: true,
        coverage: null,
        notices: [],
      },
    ],
    completeness: listName.options
      .map((list) => ({ list, stated: { asOf: '2025-09-10', by: 'R. Tamsin' } }))
      .sort((a, b) => (a.list < b.list ? -1 : 1)),
  },
  meters: {
    definitions: [{ id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 }],
    timeInService: 'tach',
    readings: { tach: { value: 407_000, asOf: '2026-03-15T20:00Z', by: 'Desk' } },
    utilisation: { perMonth: 5_000, readingGoodForDays: 31 },
  },
};

export function trainer(...parts: readonly Part<Dossier>[]): Dossier {
  return dossierOf(trainerParts, ...parts);
}

/** The trainer's entries without the named ones, with others added. */
export function entries(change: {
  readonly without?: readonly (keyof typeof trainerRecords)[];
  readonly and?: readonly RecordHead[];
}): Part<Dossier> {
  const kept = Object.entries(trainerRecords).flatMap(([name, record]) =>
    change.without?.includes(name as keyof typeof trainerRecords) ? [] : [record as RecordHead],
  );
  return { status: { records: [...kept, ...(change.and ?? [])].sort((a, b) => (a.id < b.id ? -1 : 1)) } };
}
