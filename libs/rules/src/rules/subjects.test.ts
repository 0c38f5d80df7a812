import { expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { recordOf, unitOf } from '../../testing/builders.js';
import type { Part } from '../../testing/dossiers.js';
import { dossierOf } from '../../testing/dossiers.js';
import { itemsOf } from '../../testing/equipment.js';
import type { Dossier } from '../dossier/dossier.js';
import { factsOf } from '../graph/facts.js';
import { isRecorded, wasUnit } from './subjects.js';

const factsWith = (part: Part<Dossier>) => factsOf(dossierOf(part), catalogueOf());
const entry = (kind: Parameters<typeof recordOf>[0]['kind']) =>
  factsWith({ status: { records: [recordOf({ kind, on: '2026-01-05', subjects: ['x'] })] } });
const document = { title: 'Supplement', revision: null, date: null };

const recorded: readonly (readonly [string, Part<Dossier>])[] = [
  ['a unit', { configuration: { units: [unitOf({ id: 'x' }), unitOf({ id: 'y' })] } }],
  [
    'a static system',
    {
      configuration: {
        staticSystems: [
          { id: 'y', name: 'Y', units: [] },
          { id: 'x', name: 'X', units: [] },
        ],
      },
    } as never,
  ],
  [
    'a directive',
    {
      status: {
        directives: ['y', 'x'].map((id) => ({
          id,
          number: 'TW-1',
          subject: 'aircraft',
          state: 'open' as const,
          reason: null,
          partNumber: null,
          serial: null,
          method: null,
          recurs: false,
          interval: null,
          nextDue: null,
          recordId: null,
        })),
      },
    },
  ],
  [
    'a recurring item',
    {
      status: {
        recurring: ['y', 'x'].map((id) => ({
          id,
          name: 'Item',
          subject: 'aircraft',
          origin: 'own' as const,
          document: null,
          parts: [{ kind: 'days' as const, count: 30, meter: null, tolerance: null }],
          combine: 'first' as const,
          countFrom: 'done' as const,
          toleranceFor: 'none' as const,
        })),
      },
    },
  ],
  ['a part with a life limit', { status: { lifeLimits: [{ id: 'y' }, { id: 'x' }] } } as never],
];
it.each(recorded)('%s of that name is recorded, and was no unit', (_, part) => {
  expect(isRecorded(factsWith(part), 'x')).toBe(true);
  expect(wasUnit(factsWith(part), 'x')).toBe(false);
  expect(isRecorded(factsWith(part), 'z')).toBe(false);
});

it('the aircraft and an item of 91.205 are recorded', () => {
  const facts = factsWith({ configuration: { equipment: itemsOf(['altimeter', 'clock']) } });
  expect(['aircraft', 'clock', 'fuel-quantity'].map((id) => isRecorded(facts, id))).toEqual([true, true, false]);
});

const traces: readonly (readonly [string, Part<Dossier>])[] = [
  ['its documents', { configuration: { packs: [{ id: 'p', unitId: 'x', parts: [], handOver: null }] } }],
  [
    'what it sent of itself',
    {
      configuration: {
        identities: [
          {
            id: 'x',
            address: null,
            flightId: null,
            emitterCategory: null,
            positionUnit: null,
            pairing: null,
            seen: null,
          },
        ],
      },
    },
  ],
  [
    'its supplement',
    {
      configuration: {
        supplements: [{ id: 's', units: ['y', 'x'], document, aboard: true, currentDataRequired: null, grants: null }],
      },
    },
  ],
  [
    'its placard',
    { configuration: { placards: [{ id: 'p', kind: 'other', unitId: 'x', inView: true, text: 'Out of use' }] } },
  ],
  [
    'an entry that is made about units alone',
    { status: { records: [recordOf({ kind: 'vor-check', on: '2026-01-05', subjects: ['y', 'x'] })] } },
  ],
];
it.each(traces)('what is gone was a unit by %s', (_, part) => {
  expect(wasUnit(factsWith(part), 'x')).toBe(true);
  expect(wasUnit(factsWith(part), 'z')).toBe(false);
});

it('an entry that may be about any part shows no unit', () => {
  expect(wasUnit(entry('own-item'), 'x')).toBe(false);
  expect(wasUnit(entry('elt-battery'), 'x')).toBe(true);
});
