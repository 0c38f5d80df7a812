import type { RecordHead } from '../dossier/status.js';
import { fact } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';
import { cfr } from './cite.js';

export const testSetSource = cfr('43.13(a)');
/** For repair stations; the text was not read. */
export const stationTestSetSource = cfr('145.109(b)');

/**
 * The test set that an entry names was in calibration on the day of the test. An entry that names none stands by its signer's word:
 * `instrument` null is what the entry says, not a gap of the record.
 */
export function inCalibration(record: RecordHead): Leaf | null {
  const { instrument, agency, done } = record;
  if (instrument === null) return null;
  const { calibratedUntil: until } = instrument;
  return fact(
    until === null ? null : done.date <= until,
    'in-calibration-on-the-day',
    `status.records.${record.id}.instrument.calibratedUntil`,
    { source: agency?.kind === 'repair-station' ? stationTestSetSource : testSetSource, evidence: [record.id] },
  );
}
