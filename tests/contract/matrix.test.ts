import { describe, expect, it } from 'vitest';
import { assess } from '../../libs/rules/src/assess/assess.js';
import { goodDay, trainerCatalogue } from '../../libs/rules/testing/trainer.js';
import { aircraft, flights } from './matrix.js';

/**
 * One line an aircraft, one cell a flight, in the order of `flights`: y yes, n no, ? cannot tell.
 * Behind the bar, a rule that must be among the reasons of each cell that is not yes, in the order of those cells;
 * `not-fitted` where nothing is there to be judged.
 */
const expected: Readonly<Record<string, readonly [string, ...string[]]>> = {
  'everything in order': ['yyyyyyyyyy'],
  'experimental, VFR by day only': [
    'ynnynnnnnn',
    'kind-of-operation',
    'hire-permitted',
    ...Array<string>(6).fill('kind-of-operation'),
  ],
  'light-sport, VFR only': ['ynyynnnnnn', ...Array<string>(7).fill('kind-of-operation')],
  'VOR and ILS only': ['yyynyyynnn', 'required-ports-joined', 'not-fitted', 'not-fitted', 'required-ports-joined'],
  'VFR-only navigator beside ILS': ['yyyyyyynny', 'gnss-class', 'gnss-class'],
  'two navigators, one with lapsed data': ['yyyyyyyyyy'],
  'approved for en route only': ['yyyyyyynny', 'gnss-class', 'gnss-class'],
  'one indicator for two sources, no annunciation': ['yyyynnnnnn', ...Array<string>(6).fill('source-annunciation')],
  // 91.413(a) forbids use, 91.225(f) orders transmission: cannot-tell. 91.411(a)(1) asks appendix F too: no IFR in controlled airspace.
  'transponder test lapsed, ADS-B in the same box': [
    '???nnnnnnn',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
    'transponder-test',
  ],
  'transponder test lapsed, no ADS-B': [
    'yyynnnnnnn',
    'ads-b-out-fitted',
    ...Array<string>(5).fill('static-altimeter-test'),
    'ads-b-out-fitted',
  ],
  'ELT removed 30 days ago, entry and placard': ['yyyyyyyyyy'],
  // 91.213(d)(1): no turbine airplane may use (d).
  'turbine with an inoperative landing light': ['nnnnnnnnnn', ...Array<string>(10).fill('open-defects')],
  'nothing recorded': ['??????????', ...Array<string>(10).fill('kind-of-operation')],
  'freshly adopted as found': ['yyyyyyyyyy'],
};

const sign = { yes: 'y', no: 'n', 'cannot-tell': '?' } as const;

describe('fourteen aircraft by ten flights', () => {
  it('has a line for each aircraft', () => {
    expect(Object.keys(expected)).toEqual(Object.keys(aircraft));
  });

  it.each(Object.entries(aircraft))('%s', (name, dossier) => {
    const verdicts = Object.entries(flights).map(([flight, conditions]) => {
      const { operations } = assess(dossier, trainerCatalogue, { instant: goodDay }, conditions);
      const verdict = operations['flight'];
      if (!verdict) throw new Error('no verdict');
      return { flight, verdict };
    });
    const [cells, ...reasons] = expected[name] ?? [''];
    expect(verdicts.map(({ verdict }) => sign[verdict.ready]).join('')).toBe(cells);
    const stopped = verdicts.filter(({ verdict }) => verdict.ready !== 'yes');
    stopped.forEach(({ flight, verdict }, index) => {
      const rules = verdict.because.map((key) => key.split('|')[0]);
      const wanted = reasons[index];
      if (wanted === 'not-fitted') expect(verdict.standing, flight).toBe('not-fitted');
      else expect(rules, flight).toContain(wanted);
    });
  });
});
