import { describe, expect, test } from 'vitest';
import { defaultLabour } from '../../libs/rules/src/way-back/labour.js';
import type { Job } from '../../libs/rules/src/way-back/labour.js';

/** Person-hours that the trade reckons with (common practice, collected from shop pages, quotations and habit): low, usual, high. */
const table: readonly (readonly [row: string, job: Job, low: number, usual: number, high: number])[] = [
  ['altimeter, static, encoder and transponder, nothing found', 'altitude-suite', 2, 3, 4],
  ['transponder and correspondence only', 'transponder-test', 0.8, 1.5, 2],
  ['each further altimeter', 'altimeter-test', 0.5, 0.8, 1.5],
  ['static leak, found and mended', 'static-leak-test', 1, 3, 10],
  ['altimeter replaced, leak test, marking, entry', 'replace-altimeter', 1.5, 2.5, 4],
  ['encoder replaced, correspondence, entry', 'replace-encoder', 1.5, 2.5, 4],
  ['transponder exchanged in its tray', 'replace-transponder', 2, 3, 5],
  ['transponder with ADS-B, new tray and antenna', 'fit-transponder', 10, 16, 30],
  ['navigator in place of an older one', 'replace-navigator', 16, 25, 40],
  ['navigator, first installation for IFR', 'fit-navigator', 30, 45, 80],
  ['com radio, simple aircraft', 'fit-com', 5, 12, 18],
  ['audio panel with rewiring', 'fit-audio', 8, 16, 30],
  ['indicator replaced', 'fit-indicator', 2, 4, 8],
  ['new antenna, doubler, new line', 'fit-antenna', 4, 8, 16],
  ['emergency transmitter, yearly inspection', 'elt-inspection', 0.5, 1, 1.5],
  ['emergency transmitter, battery', 'elt-battery', 0.5, 0.8, 1.5],
  ['emergency transmitter 406 MHz, new', 'fit-elt', 4, 8, 14],
  ['compass swing and card', 'compass-swing', 0.7, 1.5, 3],
  ['database load at the aircraft, each unit', 'load-database', 0.2, 0.4, 1],
  ['VOR dual check or radiated signal', 'vor-check', 0.1, 0.2, 0.7],
  ['ADS-B performance report, ground part', 'ads-b-report', 0.3, 0.5, 1],
  ['balance and equipment list on paper', 'revise-weight-record', 0.5, 1, 2],
  ['weighing', 'weigh', 2, 3, 5],
  ['package for a field approval', 'approve-installation', 6, 12, 40],
  ['intermittent fault', 'repair-defect', 2, 4, 12],
];

describe('usual hours of a job (common practice)', () => {
  test.each(table)('%s', (_row, job, low, typical, high) => {
    expect(defaultLabour.jobs[job]).toEqual({ low, typical, high, parts: null, status: 'common-practice' });
  });

  test('every figure that is called common practice is a row of the table; all others say that they are from memory', () => {
    const called = Object.entries(defaultLabour.jobs).filter(([, { status }]) => status === 'common-practice');
    expect(called.map(([job]) => job).sort()).toEqual(table.map(([, job]) => job).sort());
    const others = new Set(Object.values(defaultLabour.jobs).map(({ status }) => status));
    expect([...others].sort()).toEqual(['common-practice', 'from-memory']);
  });

  test.each(Object.entries(defaultLabour.jobs))('%s: low, usual and high in order', (_job, { low, typical, high }) => {
    expect(low).toBeLessThanOrEqual(typical);
    expect(typical).toBeLessThan(high);
  });
});
