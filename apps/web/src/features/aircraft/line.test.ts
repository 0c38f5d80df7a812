import { expect, test } from 'vitest';
import { lineOf } from './line.js';
import type { LineAnswer } from './query.js';

type Stretch = LineAnswer[number];
function stretch(from: string, to: string, ready: Stretch['ready'], more: Partial<Stretch> = {}): Stretch {
  return { from, to, ready, standing: 'JUDGED', because: [], endsBecause: [], projected: false, ...more };
}
const when = (instant: string) => `<${instant}>`;

test('each change is one numbered edge with its cause; neighbours that say the same are one part', () => {
  const view = lineOf(
    [
      stretch('2026-01-01T00:00Z', '2026-04-01T00:00Z', 'YES'),
      stretch('2026-04-01T00:00Z', '2026-07-01T00:00Z', 'YES', {
        endsBecause: [{ key: 'a|b', text: 'Annual lapses.' }],
        projected: true,
      }),
      stretch('2026-07-01T00:00Z', '2027-01-01T00:00Z', 'NO'),
    ],
    when,
  );
  expect(view.parts.map((part) => [part.status, Number(part.start.toFixed(3)), Number(part.end.toFixed(3))])).toEqual([
    ['yes', 0, 0.496],
    ['no', 0.496, 1],
  ]);
  expect(view.edges).toEqual([
    {
      number: 1,
      share: view.parts[1]?.start,
      at: '2026-07-01T00:00Z',
      projected: true,
      was: 'yes',
      is: 'no',
      because: ['Annual lapses.'],
    },
  ]);
  expect(view.summary).toBe('Yes now; no from <2026-07-01T00:00Z>, by the hours expected.');
  expect(view.months.map((month) => month.name)).toEqual([
    'Feb',
    'Mar',
    'Apr',
    'May',
    'Jun',
    'Jul',
    'Aug',
    'Sep',
    'Oct',
    'Nov',
    'Dec',
  ]);
});

test('a held aircraft is not shown as a plain no', () => {
  expect(
    lineOf([stretch('2026-01-01T00:00Z', '2026-02-01T00:00Z', 'NO', { standing: 'HELD' })], when).parts[0]?.status,
  ).toBe('held');
});

test('nothing known is said, not drawn', () => {
  expect(lineOf([], when)).toMatchObject({ parts: [], edges: [], summary: 'Nothing is known of the coming months.' });
});
