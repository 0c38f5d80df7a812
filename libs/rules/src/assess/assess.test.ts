import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordOf } from '../../testing/builders.js';
import type { Part } from '../../testing/dossiers.js';
import { entries, goodDay, trainer, trainerCatalogue, trainerRecords } from '../../testing/trainer.js';
import type { Dossier } from '../dossier/dossier.js';
import type { FlightConditions } from '../verdict/conditions.js';
import type { Verdict } from '../verdict/result.js';
import type { AskedMoment } from './assess.js';
import { assess, explainResult, widenMoment } from './assess.js';

const lesson: Partial<FlightConditions> = {
  rules: 'vfr',
  light: 'day',
  purpose: 'training-provided',
  airspace: [],
  topFt: 3000,
  overWaterBeyondGlide: false,
};
const units = (dossier: Dossier, without: string): Part<Dossier> => ({
  configuration: { units: dossier.configuration.units.filter(({ id }) => id !== without) },
});
const hold = { id: 'h', reason: 'Panel open', by: 'J. Orrell', from: '2026-03-18T00:00Z', until: '2026-03-20T00:00Z' };
const from = (instant: string, to: string, hoursAhead: number) => ({ instant, to, hoursAhead });

const cases: readonly (readonly [string, Dossier, AskedMoment, Partial<FlightConditions> | undefined])[] = [
  ['in-order', trainer(), { instant: goodDay }, undefined],
  ['in-order-for-a-lesson', trainer(), { instant: goodDay }, lesson],
  ['in-order-with-all-approaches', trainer(), { instant: goodDay }, { ...lesson, approaches: ['lpv', 'ils', 'vor'] }],
  ['seventy-hours-on', trainer(), { instant: goodDay, hours: 70 }, lesson],
  ['more-than-seventy-hours-on', trainer(), { instant: goodDay, hours: 70.01 }, lesson],
  ['flown-into-the-lapse-of-data', trainer(), from('2026-03-19T09:00Z', '2026-03-19T09:02Z', 100), undefined],
  ['flown-up-to-the-lapse-of-data', trainer(), from('2026-03-19T08:00Z', '2026-03-19T09:00Z', 100), undefined],
  ['readings-grown-old', trainer(), { instant: '2026-04-15T20:00Z' }, lesson],
  ['held', trainer({ status: { holds: [hold] } }), { instant: '2026-03-19T00:00Z' }, lesson],
  ['before-it-is-held', trainer({ status: { holds: [hold] } }), { instant: goodDay }, lesson],
  ['annual-lapsed', trainer(), { instant: '2026-10-01T12:00Z' }, lesson],
  ['without-entries', trainer({ status: { records: [] } }), { instant: goodDay }, undefined],
  ['without-navigator', trainer(units(trainer(), 'gps1')), { instant: goodDay }, { approaches: ['lpv', 'ils'] }],
  ['without-receiver', trainer(units(trainer(), 'nav1')), { instant: goodDay }, { approaches: ['ils'] }],
  [
    'without-transponder-list-not-complete',
    trainer(units(trainer(), 'xpdr1'), { status: { completeness: [] } }),
    { instant: goodDay },
    { airspace: ['class-b-c'] },
  ],
  [
    'altimeter-tested-to-10000',
    trainer(entries({ without: ['altimeter'], and: [{ ...trainerRecords.altimeter, testedToFt: 10_000 }] })),
    { instant: goodDay },
    undefined,
  ],
  [
    'two-lapses-at-once',
    trainer(
      entries({
        without: ['transponder', 'vor'],
        and: [recordOf({ kind: 'vor-check', on: '2026-01-01', subjects: ['nav1'] })],
      }),
    ),
    { instant: goodDay },
    undefined,
  ],
  [
    'night-not-wanted',
    trainer({ configuration: { aircraft: { notWanted: ['vfr-night'] } } }),
    { instant: goodDay },
    lesson,
  ],
];

describe('an assessment', () => {
  it.each(cases)('%s: what it answers is written down', async (name, dossier, asked, flight) => {
    const { of, operations, results, notJudged } = assess(dossier, trainerCatalogue, asked, flight);
    const { rules: _rules, zones: _zones, ...question } = of;
    const lines = [
      JSON.stringify(question),
      `not judged: ${notJudged.join(' ')}`,
      ...Object.entries(operations).map(([operation, verdict]) => `${operation}: ${verdictLine(verdict)}`),
      ...results
        .filter(
          ({ outcome, changesAt, hoursLeft }) =>
            outcome === 'not-met' || outcome === 'cannot-tell' || changesAt !== undefined || hoursLeft !== undefined,
        )
        .map(({ key, outcome, messageId, changesAt, hoursLeft, remedies }) =>
          [key, outcome, messageId, changesAt, hoursLeft, remedies.map(({ change }) => change).join('+')].join(' '),
        ),
    ];
    const wayOut = 'see that an assessment should say this, then run `npx vitest run --project rules libs/rules -u`';
    const file = fileURLToPath(new URL(`../../stated/assessments/${name}.txt`, import.meta.url));
    await expect(`${lines.join('\n')}\n`, wayOut).toMatchFileSnapshot(file);
  });
});

function verdictLine({ ready, standing, by, because, topFt, changesAt, hoursLeft, weakestSource }: Verdict): string {
  return JSON.stringify({ ready, standing, by, because, topFt, changesAt, hoursLeft, weakestSource });
}

describe('a result, opened', () => {
  const key = 'hundred-hour-inspection|aircraft';

  it('has its parts with the outcome of each', () => {
    const within = explainResult(trainer(), trainerCatalogue, { instant: goodDay, hours: 70 }, key, lesson);
    const beyond = explainResult(trainer(), trainerCatalogue, { instant: goodDay, hours: 70.01 }, key, lesson);
    expect([within?.outcome, beyond?.outcome]).toEqual(['met', 'not-met']);
  });

  it('is nothing where there is no such result', () => {
    expect(explainResult(trainer(), trainerCatalogue, { instant: goodDay }, 'no-rule|aircraft')).toBeNull();
  });

  it('is asked at the end of a flight', () => {
    const data = 'navigation-data-current|gps1:en-route';
    const at = (to: string) =>
      explainResult(trainer(), trainerCatalogue, from('2026-03-19T09:00Z', to, 0), data)?.outcome;
    expect([at('2026-03-19T09:00Z'), at('2026-03-19T09:01Z')]).toEqual(['met', 'not-met']);
  });
});

it('a moment in short is a point in time', () => {
  expect(widenMoment({ instant: goodDay })).toEqual({ instant: goodDay, to: goodDay, hoursAhead: 0 });
  expect(widenMoment({ instant: goodDay, hours: 1.25 })).toEqual({ instant: goodDay, to: goodDay, hoursAhead: 125 });
  expect(widenMoment(from(goodDay, '2026-03-17T00:00Z', 5))).toEqual(from(goodDay, '2026-03-17T00:00Z', 5));
});
