import type { Dossier } from '../src/dossier/dossier.js';
import type { FlightConditions } from '../src/verdict/conditions.js';
import { approvalOf, mechanic, recordOf } from './builders.js';
import { busy, ils, lpv, vfr } from './flights.js';
import { entries, trainer, trainerRecords } from './trainer.js';

/** Each test of 2025 moved back a year, out of its 24 months. */
export const old = (name: 'transponder' | 'altimeter' | 'static' | 'reporting') => ({
  ...trainerRecords[name],
  id: `${name}-old`,
  done: { date: '2023-12-05', at: null },
});
const base = trainer();
const withUnits = (change: (unit: Dossier['configuration']['units'][number]) => object) => ({
  configuration: { units: base.configuration.units.map((unit) => ({ ...unit, ...change(unit) })) },
});
export const vfrOnly = trainer(
  withUnits((unit) =>
    unit.id === 'gps1'
      ? { approval: approvalOf({ basis: 'stc-model-list', permission: true, modelListed: true, grants: ['vfr-only'] }) }
      : {},
  ),
  { configuration: { supplements: [] } },
);

const compliance = recordOf({
  kind: 'directive-compliance',
  on: '2025-09-10',
  subjects: ['dir1'],
  agency: mechanic,
  outcome: 'failed',
});

export const openPanel = {
  id: 'h1',
  reason: 'Panel open',
  by: 'J. Orrell',
  from: '2026-03-01T12:00Z',
  until: null,
} as const;
/** Its life ended the day before the flights. */
export const wornHose = {
  id: 'hose',
  name: 'Fuel hose',
  serial: null,
  subject: 'hose',
  mandatory: true,
  document: null,
  life: null,
  retireBy: { by: 'date', date: '2026-03-15', meter: null, at: null },
} as const;

/** Small losses of one trainer: what is lost, on which flight, and the jobs of the way back that a shop would name. */
export const lostFlights: readonly (readonly [string, Dossier, Partial<FlightConditions>, readonly string[]])[] = [
  [
    'a lapsed transponder test',
    trainer(entries({ without: ['transponder'], and: [old('transponder')] })),
    busy,
    ['transponder-test xpdr1'],
  ],
  [
    'a lapsed VOR check, flight to the ILS: the check costs less than anything',
    trainer(entries({ without: ['vor'] }), { status: { loads: [] } }),
    ils,
    ['vor-check nav1'],
  ],
  ['expired data, flight to LPV', trainer({ status: { loads: [] } }), lpv, ['load-database gps1 navigation']],
  [
    'every altitude test lapsed: one visit costs less than its parts',
    trainer(
      entries({
        without: ['transponder', 'altimeter', 'static', 'reporting'],
        and: [old('transponder'), old('altimeter'), old('static'), old('reporting')],
      }),
    ),
    busy,
    ['altitude-suite'],
  ],
  [
    'held for a squawk that is done',
    trainer({
      status: {
        holds: [openPanel],
      },
    }),
    vfr,
    ['lift-hold h1'],
  ],
  [
    'a hose beyond its life',
    trainer({
      status: {
        lifeLimits: [wornHose],
      },
    }),
    vfr,
    ['replace-part hose'],
  ],
  [
    'hours not read for two months, instruction',
    trainer({
      meters: { readings: { tach: { value: 405_000, asOf: '2026-01-10T12:00Z', by: 'A. Lorne' } } },
    }),
    { ...vfr, purpose: 'training-provided' },
    ['read-meters'],
  ],
  // A release after the list of directives was stated: somebody looks them up again.
  [
    'a navigator limited to VFR, flight to LPV',
    vfrOnly,
    lpv,
    ['approve-installation gps1', 'find-out directives|unit:gps1'],
  ],
  [
    'a unit deactivated without placard and entry',
    trainer(
      withUnits((unit) =>
        unit.id === 'nav1'
          ? { deactivated: { since: { date: '2026-03-12', at: null }, placarded: false, recorded: false } }
          : {},
      ),
    ),
    vfr,
    ['deactivate-unit nav1'],
  ],
  [
    'a directive whose entry failed',
    trainer(entries({ and: [compliance] }), {
      status: {
        directives: [
          {
            id: 'dir1',
            number: '2019-03-07',
            subject: 'aircraft',
            state: 'complied',
            reason: null,
            method: 'Paragraph (c)',
            partNumber: null,
            serial: null,
            recurs: false,
            interval: null,
            nextDue: null,
            recordId: compliance.id,
          },
        ],
      },
    }),
    vfr,
    ['directive-compliance dir1'],
  ],
  [
    'an hour and a half of transmitting on the counter',
    trainer({
      meters: {
        definitions: [
          ...base.meters.definitions,
          { id: 'elt-use', name: 'Transmitter', kind: 'elt-transmitter', perFlightHour: 0, offset: 0 },
        ],
        readings: { 'elt-use': { value: 150, asOf: '2026-03-15T20:00Z', by: 'Desk' } },
      },
    }),
    vfr,
    ['elt-battery elt1'],
  ],
  [
    'annual lapsed and emergency transmitter not inspected',
    trainer(
      entries({
        without: ['annual', 'locator'],
        and: [
          { ...trainerRecords.annual, id: 'annual-old', done: { date: '2024-02-01', at: null } },
          { ...trainerRecords.locator, id: 'locator-old', done: { date: '2024-02-01', at: null } },
        ],
      }),
    ),
    vfr,
    ['elt-inspection elt1', 'annual-inspection'],
  ],
];
