import type { RecordHead } from '../../dossier/status.js';
import { fact } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

const source = cfr('43.13(a)');
/** For repair stations; the text was not read. */
const stationSource = cfr('145.109(b)', 'from-memory');

/** The serial in the data is what a set found out of tolerance is traced by: every entry made with it has its own statement. */
export const testEquipmentCalibrated = defineRule(
  {
    id: 'test-equipment-calibrated',
    topic: 'after-work',
    asks: 'The test set named in an entry was in calibration on the day of the test.',
    binds: 'Entries that name a test set.',
    sources: [source, stationSource],
    messages: {
      calibrated: 'Test set {serial} was in calibration on {done}.',
      lapsed: 'Test set {serial} was in calibration until {until}; the test was on {done}.',
      unclear: 'Whether test set {serial} was in calibration on {done} is not recorded.',
    },
    establishes: [],
  },
  (facts) => facts.dossier.status.records.flatMap((each) => statement(each)),
);

function statement(record: RecordHead): readonly Draft[] {
  const { instrument, agency, done } = record;
  if (instrument === null) return [];
  const { serial, calibratedUntil: until } = instrument;
  const path = `status.records.${record.id}.instrument.calibratedUntil`;
  return [
    {
      subject: record.id,
      clause: fact(until === null ? null : done.date <= until, 'in-calibration-on-the-day', path, {
        source: agency?.kind === 'repair-station' ? stationSource : source,
        evidence: [record.id],
      }),
      messages: { met: 'calibrated', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'calibrated' },
      data: { serial, until, done: done.date },
      effects: [{ stops: 'release' }, { stops: 'nothing', kind: 'record' }],
      remedies: [
        recordIt(record.kind, record.subjects[0] ?? 'aircraft'),
        ...(until === null ? [findOut('record.correct', record.id, path)] : []),
      ],
    },
  ];
}
