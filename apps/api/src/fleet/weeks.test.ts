import { describe, expect, it } from 'vitest';
import { comingWeeks } from './house.data.js';

describe('findings of coming weeks', () => {
  it('are running sums of what opens and closes', () => {
    const turned = [
      { week: '2026-03-02', effect: 'record', by: 3 },
      { week: '2026-03-09', effect: 'record', by: 1 },
      { week: '2026-03-09', effect: 'record', by: -2 },
      { week: '2026-03-16', effect: 'advice', by: 1 },
    ];
    const open = (effect: string) =>
      comingWeeks(turned, 2, '2026-03-02')
        .filter((each) => each.effect === effect)
        .map((each) => [each.week, each.open]);
    expect(open('record')).toEqual([
      ['2026-03-02', 3],
      ['2026-03-09', 2],
      ['2026-03-16', 2],
    ]);
    expect(open('advice')).toEqual([
      ['2026-03-02', 0],
      ['2026-03-09', 0],
      ['2026-03-16', 1],
    ]);
  });
});
