import { mechanic, readingsOf, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { BondingReadings } from '../../dossier/readings.js';
import type { RecordHead } from '../../dossier/status.js';
import { bondingReading } from './bonding-reading.js';

type Point = BondingReadings['points'][number];
const pointOf = (kind: Point['kind'], milliohm: number | null): Point => ({ kind, place: 'antenna base', milliohm });
const of = (...points: readonly Point[]) => points;
const check = (points: readonly Point[] | null, part: Partial<RecordHead> = {}) =>
  dossierOf({
    status: {
      records: [
        recordOf({
          kind: 'bonding-check',
          on: '2026-02-10',
          agency: mechanic,
          readings: points === null ? null : readingsOf({ bonding: { points } }),
          ...part,
        }),
      ],
    },
  });
const at = '2026-03-01T12:00Z';

// AC 43.13-1B 11-187 to 11-189: equipment frame below 2.5 milliohm, jumper connection at most 3, static bond below 1 ohm.
testRule(bondingReading, [
  {
    name: 'frame just below 2.5',
    dossier: check(of(pointOf('equipment-frame', 2.49))),
    at,
    expect: 'met',
    message: 'within',
  },
  {
    name: 'frame at 2.5',
    dossier: check(of(pointOf('equipment-frame', 2.5))),
    at,
    expect: 'not-met',
    message: 'outside',
    data: { what: 'equipment-frame', at: 'antenna base', value: 2.5, limit: 2.5 },
  },
  { name: 'jumper at 3', dossier: check(of(pointOf('jumper-connection', 3))), at, expect: 'met' },
  { name: 'jumper above 3', dossier: check(of(pointOf('jumper-connection', 3.01))), at, expect: 'not-met' },
  { name: 'static bond at 999', dossier: check(of(pointOf('static-bond', 999))), at, expect: 'met' },
  { name: 'static bond at 1,000', dossier: check(of(pointOf('static-bond', 1000))), at, expect: 'not-met' },
  {
    name: 'a bond without a reading',
    dossier: check(of(pointOf('equipment-frame', 1), pointOf('static-bond', null))),
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
  },
  { name: 'an entry without readings', dossier: check(null), at, expect: 'not-applicable', message: 'none' },
  {
    name: 'an entry marked failed, without readings',
    dossier: check(null, { outcome: 'failed' }),
    at,
    expect: 'not-met',
    message: 'failed',
  },
]);
