import { describe, expect, it } from 'vitest';
import { mechanic, recordOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { RecordHead } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import type { Instant } from '../time/instant.js';
import { batteryOf } from './elt-battery.js';
import { asked } from './gaps.js';

const battery = (at: Instant | null, value: number | null = null) =>
  recordOf({
    kind: 'elt-battery',
    id: 'battery',
    on: '2026-01-10',
    done: { date: '2026-01-10', at },
    subjects: ['elt1'],
    agency: mechanic,
    expires: '2028-01-31',
    meters: value === null ? [] : [{ meter: 'beacon', value }],
  });
const shown = (on: string, value: number, part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'elt-inspection',
    id: `${on}-${value}`,
    on,
    subjects: ['elt1'],
    meters: [{ meter: 'beacon', value }],
    ...part,
  });

/** What is said of the use of the battery: outcome and hours. */
function used(records: readonly RecordHead[], read: { readonly value: number; readonly asOf: Instant } | null = null) {
  const facts = factsOf(
    dossierOf({
      configuration: {
        aircraft: { certificate: 'standard' },
        units: [unitOf({ id: 'elt1', functions: ['elt'] })],
      },
      status: { records },
      meters: {
        definitions: [
          { id: 'beacon', name: 'Beacon counter', kind: 'elt-transmitter', perFlightHour: null, offset: 0 },
          { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
        ],
        readings: read === null ? {} : { beacon: { ...read, by: 'Desk' } },
      } as never,
    }),
    catalogueOf(),
  );
  const unit = facts.units.get('elt1');
  const leaf = unit && asked(batteryOf(facts, unit).clause).find(({ label }) => /battery-use|transmitting/.test(label));
  return [leaf?.inside, leaf?.value?.amount ?? null];
}

// 91.207(c)(1): replaced when the transmitter was in use for more than one cumulative hour.
describe('hours of transmitting on a battery of 10 January', () => {
  it.each<[string, readonly RecordHead[], unknown]>([
    ['none entered', [battery(null)], ['met', null]],
    ['one hour in its own entry', [battery(null, 100)], ['met', 1]],
    ['a hundredth more', [battery(null, 101)], ['not-met', 1.01]],
    [
      'the most that later entries show',
      [battery(null), shown('2026-02-01', 110), shown('2026-03-01', 40)],
      ['not-met', 1.1],
    ],
    ['another entry of its day tells of the old one', [battery(null), shown('2026-01-10', 500)], ['met', null]],
    ['an entry the day after', [battery(null), shown('2026-01-11', 500)], ['not-met', 5]],
    ['an entry of another unit', [battery(null), shown('2026-02-01', 500, { subjects: ['elt2'] })], ['met', null]],
    [
      'another meter',
      [battery(null), shown('2026-02-01', 0, { meters: [{ meter: 'tach', value: 500 }] })],
      ['met', null],
    ],
  ])('%s', (_, records, expected) => {
    expect(used(records)).toEqual(expected);
  });

  // The base is in Chicago, six hours behind in winter.
  it.each<[string, Instant | null, { readonly value: number; readonly asOf: Instant }, unknown]>([
    ['read the day after', null, { value: 101, asOf: '2026-01-11T06:00Z' }, ['not-met', 1.01]],
    ['read the day before: of the old one', null, { value: 500, asOf: '2026-01-10T05:59Z' }, ['met', null]],
    [
      'read that day, an hour at most: whichever it was',
      null,
      { value: 100, asOf: '2026-01-10T18:00Z' },
      ['met', null],
    ],
    ['read that day, more than an hour', null, { value: 101, asOf: '2026-01-10T18:00Z' }, ['cannot-tell', null]],
    ['read a minute after it', '2026-01-10T18:00Z', { value: 101, asOf: '2026-01-10T18:01Z' }, ['not-met', 1.01]],
    [
      'read as it was replaced: of the old one',
      '2026-01-10T18:00Z',
      { value: 101, asOf: '2026-01-10T18:00Z' },
      ['met', null],
    ],
  ])('%s', (_, at, read, expected) => {
    expect(used([battery(at)], read)).toEqual(expected);
  });
});
