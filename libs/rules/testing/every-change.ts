import type { Change, ChangeKind, ChangeOf } from '../src/changes/changes.js';
import type { Dossier } from '../src/dossier/dossier.js';
import { approvalOf, inspector, linkOf, mechanic, recordOf, unitOf } from './builders.js';
import { plainAircraft } from './changes.js';
import { entries, goodDay, trainer } from './trainer.js';

const performed = { date: '2026-03-10', at: null };
const document = { title: 'Drawing 12', revision: 'A', date: '2026-01-05' };
const by = { asOf: '2026-03-10', by: 'R. Tamsin' };
const mass = { what: 'Swap', weightLb: 1, armIn: 40, on: '2026-03-10', listed: true };

/** The trainer with one of everything that a change may name. */
export const busy: Dossier = trainer(
  entries({ and: [recordOf({ kind: 'compass-swing', on: '2026-03-02', id: 'swing' })] }),
  {
    configuration: {
      openings: [
        {
          id: 'stack',
          place: 'centre-stack',
          widthIn: null,
          heightIn: null,
          depthIn: null,
          rightOfEyeIn: null,
          belowEyeIn: null,
          eyeDistanceIn: null,
        },
      ],
      placards: [{ id: 'card', kind: 'other', unitId: 'gps1', inView: true, text: 'Something' }],
    },
    status: {
      defects: [
        {
          id: 'd1',
          kind: 'wear',
          subject: 'gps1',
          text: 'Knob loose.',
          raised: { date: '2026-03-05', at: null },
          decidedBy: null,
          deferral: null,
        },
      ],
      holds: [
        { id: 'h1', reason: 'Panel open', by: 'J. Orrell', from: '2026-03-01T00:00Z', until: null },
        { id: 'h2', reason: 'Paid late', by: 'Desk', from: '2026-03-01T00:00Z', until: '2026-03-02T00:00Z' },
      ],
      recurring: [
        {
          id: 'filter',
          name: 'Filter',
          subject: 'aircraft',
          origin: 'own',
          document: null,
          parts: [{ kind: 'hours', count: 5000, meter: 'tach', tolerance: null }],
          combine: 'first',
          countFrom: 'done',
          toleranceFor: 'none',
        },
      ],
      lifeLimits: [
        {
          id: 'hose',
          name: 'Hose',
          serial: null,
          subject: 'aircraft',
          mandatory: null,
          document: null,
          life: null,
          retireBy: { by: 'date', date: '2030-01-01', meter: null, at: null },
        },
      ],
      obligations: [
        {
          id: 'compass-swing:aircraft',
          what: 'compass-swing',
          subject: 'aircraft',
          since: { date: '2026-03-01', at: null },
          becauseOf: 'work.done',
          touched: 'electrical',
          closedBy: 'swing',
        },
        {
          id: 'gnss-function-check:gps1',
          what: 'gnss-function-check',
          subject: 'gps1',
          since: { date: '2026-03-01', at: null },
          becauseOf: 'unit.install',
          touched: 'gnss',
          closedBy: null,
        },
        {
          id: 'what-was-touched:nav1',
          what: 'what-was-touched',
          subject: 'nav1',
          since: { date: '2026-03-01', at: null },
          becauseOf: 'link.connect',
          touched: null,
          closedBy: null,
        },
      ],
      sayings: [
        {
          id: 's1',
          rule: 'vor-check',
          subject: 'nav1',
          by: 'R. Tamsin',
          reason: 'Read the text',
          from: goodDay,
          until: '2026-04-16T16:00Z',
        },
      ],
    },
  },
);

const base: Dossier['configuration'] = busy.configuration;
const unitNamed = (id: string) => base.units.find((each) => each.id === id) ?? unitOf({ id });
const antennaNamed = (id: string) => base.antennas.filter((each) => each.id === id);

type Examples = { readonly [K in ChangeKind]: readonly Omit<ChangeOf<K>, 'kind' | 'version'>[] };
const examples: Examples = {
  'aircraft.add': [{ aircraft: plainAircraft }],
  'aircraft.amend': [
    { aircraft: { ...base.aircraft, registration: 'TW-99Q' }, reason: 'New mark', performed },
    { aircraft: { ...base.aircraft, seats: 2 }, reason: 'Counted again', performed },
  ],
  'authority.set': [
    {
      authority: { dayVfr: true, nightVfr: null, ifr: false, hire: null, document, conditionInspectionMonths: null },
    },
  ],
  'equipment.state': [
    {
      items: [
        { item: 'third-attitude', state: 'fitted', unitId: 'cdi1', seen: by },
        { item: 'altimeter', state: 'not-required', unitId: null, seen: by },
      ],
    },
  ],
  'static-system.set': [
    { system: { id: 'static-0', name: 'Alternate', lastOpened: performed } },
    { system: { id: 'static-1', name: 'Main', lastOpened: null } },
  ],
  'work.done': [
    {
      what: 'Everything opened',
      unitId: 'gps1',
      touched: ['static-system', 'altitude-chain', 'gnss', 'ads-b'],
      performed,
    },
    { what: 'And more', unitId: null, touched: ['electrical', 'behind-panel', 'flight-characteristics'], performed },
    { what: 'Shield tied', unitId: null, touched: ['ferrous', 'transponder', 'registration'], performed },
  ],
  'touched.state': [{ obligationId: 'what-was-touched:nav1', touched: ['nothing'], by }],
  'say-so.give': [
    {
      sayso: {
        id: 's2',
        rule: 'vor-check',
        subject: 'nav1',
        by: 'Desk',
        reason: 'Read it too',
        from: goodDay,
        until: '2026-03-17T16:00Z',
      },
    },
  ],
  'say-so.end': [{ saysoId: 's1', at: '2026-03-17T16:00Z', reason: 'Found in the book' }],
  'unit.install': [
    { unit: unitOf({ id: 'gps2', typeId: 'nx5', openingId: 'stack' }), performed, touched: ['gnss'], mass },
    {
      unit: unitOf({ id: 'audio1', functions: ['audio'], manufactured: '2020-01-01', approval: approvalOf() }),
      performed,
      touched: [],
      mass: null,
    },
    {
      unit: unitOf({ id: 'alt2', typeId: 'al3' }),
      performed,
      touched: ['altitude-chain', 'static-system'],
      mass: null,
    },
    { unit: unitOf({ id: 'enc2', typeId: 'en1' }), performed, touched: ['altitude-chain'], mass: null },
    { unit: unitOf({ id: 'x2', typeId: 'ms4' }), performed, touched: ['transponder', 'ads-b'], mass: null },
    { unit: unitOf({ id: 'u2', functions: ['ads-b-out-uat'] }), performed, touched: ['ads-b'], mass: null },
  ],
  'unit.remove': [
    { unitId: 'gps1', performed, reason: 'Sold', touched: ['gnss'], mass },
    { unitId: 'alt1', performed, reason: 'Overhaul', touched: ['altitude-chain', 'static-system'], mass: null },
  ],
  'unit.amend': [{ unit: { ...unitNamed('gps1'), serial: 'G2' }, sameUnit: true, reason: 'Read again' }],
  'unit.deactivate': [{ unitId: 'gps1', performed, placarded: true, recorded: null }],
  'unit.reactivate': [{ unitId: 'gps1', performed, touched: ['gnss'] }],
  'link.connect': [{ link: linkOf('gps1', 'P1-LAT', 'cdi2', 'LAT', { id: 'new' }), performed, touched: ['gnss'] }],
  'link.disconnect': [{ linkId: base.links[0]?.id ?? '', performed, touched: ['gnss'], reason: 'Moved' }],
  'antenna.fit': [
    {
      antenna: { id: 'a-2', kind: 'com', units: ['nav1'], approved: null, xIn: 1, yIn: 1 },
      performed,
      touched: ['ferrous'],
    },
    ...antennaNamed('a-gps').map((antenna) => ({ antenna: { ...antenna, xIn: 60 }, performed, touched: [] })),
  ],
  'antenna.remove': [{ antennaId: 'a-gps', performed, touched: ['nothing'], reason: 'Cracked' }],
  'placard.fit': [
    { placard: { id: 'card2', kind: 'compass', unitId: null, inView: true, text: 'Deviation' } },
    { placard: { id: 'card', kind: 'other', unitId: 'nav1', inView: false, text: 'Other' } },
  ],
  'placard.remove': [{ placardId: 'card', reason: 'Faded' }],
  'supplement.set': [
    {
      supplement: {
        id: 'sup-2',
        units: ['gps1', 'nav1'],
        document,
        aboard: true,
        currentDataRequired: null,
        grants: null,
      },
    },
  ],
  'opening.set': [
    {
      opening: {
        id: 'hole',
        place: 'pilot-panel',
        widthIn: 3,
        heightIn: 3,
        depthIn: null,
        rightOfEyeIn: null,
        belowEyeIn: null,
        eyeDistanceIn: null,
      },
    },
  ],
  'electrical.set': base.electrical === null ? [] : [{ electrical: { ...base.electrical, busV: 28 } }],
  'mass.revise': base.mass === null ? [] : [{ mass: { ...base.mass, revisedOn: '2026-03-10', emptyWeightLb: 1430 } }],
  'mass.note': [{ item: mass }],
  'record.add': [
    {
      record: recordOf({
        kind: 'gnss-function-check',
        on: '2026-03-10',
        id: 'check',
        subjects: ['gps1'],
        agency: mechanic,
      }),
    },
    {
      record: recordOf({
        kind: 'annual-inspection',
        on: '2026-03-10',
        id: 'annual',
        agency: inspector,
        meters: [{ meter: 'tach', value: 406_000 }],
      }),
    },
  ],
  'record.correct': [
    { record: recordOf({ kind: 'compass-swing', on: '2026-02-10', id: 'swing' }), reason: 'Read again' },
    {
      record: recordOf({
        kind: 'compass-swing',
        on: '2026-03-03',
        id: 'swing',
        meters: [{ meter: 'tach', value: 406_000 }],
      }),
      reason: 'Read again',
    },
  ],
  'database.load': (['this', 'next'] as const).map((slot) => ({
    load: {
      unitId: 'gps1',
      database: 'navigation' as const,
      slot,
      cycle: '2603',
      effective: '2026-03-19T09:01Z',
      expires: '2026-04-16T09:01Z',
      loaded: performed,
      fromFlightDeck: true,
      coverage: null,
      notices: [],
    },
  })),
  'database.drop': [{ unitId: 'gps1', database: 'navigation', slot: 'this' }],
  'defect.raise': [
    {
      defect: {
        id: 'd2',
        kind: 'inoperative-item',
        subject: 'altimeter',
        text: 'Sticks.',
        raised: performed,
        decidedBy: mechanic,
        deferral: null,
      },
    },
  ],
  'defect.defer': [
    {
      defectId: 'd1',
      deferral: {
        route: 'mel',
        notRequired: null,
        secured: true,
        placarded: true,
        recorded: true,
        noHazardBy: null,
        letterAboard: true,
        on: '2026-03-05',
        reinspectedOn: null,
      },
    },
  ],
  'defect.close': [
    { defectId: 'd1', how: 'repaired', by: mechanic, performed, touched: ['gnss'], entry: 'Log 2, page 3' },
  ],
  'directive.set': [
    {
      directive: {
        id: 'ad1',
        number: 'TW-1',
        subject: 'gps1',
        state: 'complied',
        reason: null,
        partNumber: null,
        serial: null,
        method: 'Paragraph (a)',
        recurs: true,
        interval: null,
        nextDue: { by: 'meter', date: null, meter: 'tach', at: 420_000 },
        recordId: null,
      },
    },
    {
      directive: {
        id: 'ad2',
        number: 'TW-2',
        subject: 'ad2',
        state: 'not-applicable',
        reason: 'Another serial',
        partNumber: null,
        serial: null,
        method: null,
        recurs: true,
        interval: null,
        nextDue: { by: 'date', date: '2027-01-01', meter: null, at: null },
        recordId: null,
      },
    },
  ],
  'hold.place': [{ hold: { id: 'h3', reason: 'Waiting', by: 'Desk', from: goodDay, until: null } }],
  'hold.lift': [{ holdId: 'h1', at: goodDay, reason: 'Closed again' }],
  'completeness.state': [
    {
      lists: [
        { list: 'placards', stated: by },
        { list: 'equipment', stated: by },
      ],
    },
  ],
  adopt: [
    { units: ['gps1'], links: [base.links[0]?.id ?? ''], by, approval: approvalOf() },
    { units: ['alt1', 'cdi1'], links: base.links.map(({ id }) => id), by, approval: approvalOf({ document }) },
  ],
  'identity.set': [
    {
      identity: {
        id: 'xpdr1',
        address: 'A0B1C2',
        flightId: 'TW01Q',
        emitterCategory: 'light',
        positionUnit: 'gps1',
        pairing: document,
        seen: by,
      },
    },
  ],
  'recurring.set': [
    {
      item: {
        id: 'hoses',
        name: 'Hoses',
        subject: 'gps1',
        origin: 'continued-airworthiness',
        document,
        parts: [
          { kind: 'hours', count: 10_000, meter: 'tach', tolerance: 100 },
          { kind: 'landings', count: 500, meter: 'tach', tolerance: null },
          { kind: 'days', count: 90, meter: null, tolerance: null },
        ],
        combine: 'last',
        countFrom: 'due',
        toleranceFor: 'any',
      },
    },
  ],
  'recurring.end': [{ itemId: 'filter', reason: 'Taken out' }],
  'life-limit.set': [
    {
      limit: {
        id: 'bottle',
        name: 'Bottle',
        serial: 'B1',
        subject: 'bottle',
        mandatory: true,
        document,
        life: null,
        retireBy: { by: 'meter', date: null, meter: 'tach', at: 500_000 },
      },
    },
    {
      limit: {
        id: 'belt',
        name: 'Belt',
        serial: null,
        subject: 'aircraft',
        mandatory: null,
        document: null,
        life: null,
        retireBy: { by: 'date', date: '2031-01-01', meter: null, at: null },
      },
    },
  ],
  'life-limit.end': [{ limitId: 'hose', reason: 'Replaced' }],
  'paper.set': [
    { paper: { id: 'reg', kind: 'registration', number: '12', aboard: true, expires: '2029-01-31', seen: by } },
  ],
  'pack.set': [
    {
      pack: {
        id: 'pack1',
        unitId: 'gps1',
        parts: [{ part: 'supplement', place: 'aboard', on: '2026-03-10' }],
        handOver: by,
      },
    },
  ],
  'decision.record': [
    {
      decision: {
        id: 'dec1',
        question: 'major-or-minor',
        subject: 'gps1',
        answer: 'minor',
        reasons: 'Same place and wiring.',
        by: inspector,
        on: '2026-03-10',
        form: null,
      },
    },
  ],
  'meter.define': [
    {
      definition: { id: 'hobbs', name: 'Hour meter', kind: 'hour-meter', perFlightHour: 1000, offset: 0 },
      standsForTimeInService: false,
    },
    {
      definition: { id: 'hobbs', name: 'Hour meter', kind: 'hour-meter', perFlightHour: 1000, offset: 0 },
      standsForTimeInService: true,
    },
  ],
  'meter.read': [{ meter: 'tach', dial: 407_000, asOf: '2026-03-16T10:00Z', by: 'Desk' }],
  'meter.replace': [{ meter: 'tach', oldDial: 407_100, newDial: 5, at: '2026-03-16T10:00Z', by: 'Desk' }],
  'meter.correct': [{ meter: 'tach', value: 406_000, asOf: '2026-03-16T10:00Z', by: 'Desk', reason: 'Misread' }],
  'utilisation.set': [{ utilisation: { perMonth: 3_000, readingGoodForDays: 14 } }],
};

/** Changes of every kind that may be recorded for `busy`; `aircraft.add` for a dossier without an aircraft. */
export const everyChange: readonly Change[] = Object.entries(examples).flatMap(([kind, list]) =>
  (list as readonly object[]).map((fields) => ({ kind, version: 1, ...fields }) as Change),
);
