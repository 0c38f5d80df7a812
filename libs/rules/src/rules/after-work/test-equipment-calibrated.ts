import type { RecordHead } from '../../dossier/status.js';
import type { Draft } from '../../verdict/result.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { inCalibration, stationTestSetSource, testSetSource } from '../test-set.js';

/** The serial in the data is what a set found out of tolerance is traced by: every entry made with it has its own statement. An entry made with a set out of calibration does not count (`accomplished`). */
export const testEquipmentCalibrated = defineRule(
  {
    id: 'test-equipment-calibrated',
    topic: 'after-work',
    asks: 'The test set named in an entry was in calibration on the day of the test.',
    binds: 'Entries that name a test set.',
    sources: [testSetSource, stationTestSetSource],
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
  const clause = inCalibration(record);
  if (clause === null || record.instrument === null) return [];
  const { serial, calibratedUntil: until } = record.instrument;
  return [
    {
      subject: record.id,
      clause,
      messages: { met: 'calibrated', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'calibrated' },
      data: { serial, until, done: record.done.date },
      effects: [{ stops: 'release' }, { stops: 'nothing', kind: 'record' }],
      remedies: [
        recordIt(record.kind, record.subjects[0] ?? 'aircraft'),
        ...(until === null ? [findOut('record.correct', record.id, ...(clause.missing ?? []))] : []),
      ],
    },
  ];
}
