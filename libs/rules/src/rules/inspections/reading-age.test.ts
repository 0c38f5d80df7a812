import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Policy } from '../../catalogue/policy.js';
import { readingAge } from './reading-age.js';

const dossier = dossierOf({
  meters: {
    definitions: [
      { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 900, offset: 0 },
      { id: 'beacon', name: 'Transmitter', kind: 'elt-transmitter', perFlightHour: 0, offset: 0 },
      { id: 'log', name: 'Flight log', kind: 'flight-log', perFlightHour: 1000, offset: 0 },
    ],
    readings: {
      tach: { value: 120_000, asOf: '2026-03-02T12:00Z', by: 'J. Orrell' },
      beacon: { value: 10, asOf: '2026-01-02T12:00Z', by: 'J. Orrell' },
    },
  },
});
/** 2026-03-09 begins in Chicago at 05:00Z: summer time began there on the 8th. */
const fromNinth: Policy = {
  kind: 'reading-age',
  version: 1,
  from: '2026-03-09',
  body: { days: 31, noticeDays: 7 },
};
const withoutNotice: Policy = { ...fromNinth, version: 2, from: '2026-03-12', body: { days: 20, noticeDays: null } };
const of = { dossier, subject: 'tach', policies: [fromNinth] };

testRule(readingAge, [
  { name: 'no policy set', dossier, at: '2026-06-01T12:00Z', expect: 'none' },
  {
    name: 'the minute before the policy counts',
    ...of,
    at: '2026-03-09T04:59Z',
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'the minute before seven days have passed',
    ...of,
    at: '2026-03-09T11:59Z',
    expect: 'met',
    message: 'fresh',
    data: { meter: 'Tachometer', read: '2026-03-02' },
  },
  { name: 'seven days after the reading', ...of, at: '2026-03-09T12:00Z', expect: 'not-met', message: 'old' },
  {
    name: 'a later version without notice speaks at the end of the days themselves',
    ...of,
    policies: [fromNinth, withoutNotice],
    at: '2026-03-12T05:00Z',
    expect: 'met',
  },
  {
    name: 'the minute before twenty days have passed',
    ...of,
    policies: [fromNinth, withoutNotice],
    at: '2026-03-22T11:59Z',
    expect: 'met',
  },
  {
    name: 'twenty days after the reading',
    ...of,
    policies: [fromNinth, withoutNotice],
    at: '2026-03-22T12:00Z',
    expect: 'not-met',
  },
  { name: 'a meter never read', ...of, subject: 'log', at: '2026-03-20T12:00Z', expect: 'none' },
  { name: 'the time that a transmitter has sent', ...of, subject: 'beacon', at: '2026-03-20T12:00Z', expect: 'none' },
]);
