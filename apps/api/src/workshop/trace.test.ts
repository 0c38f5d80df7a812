import { describe, expect, it } from 'vitest';
import type { Calibration } from './test-sets.data.js';
import { suspectSpan } from './trace.js';

const check = (checkedOn: string, more: Partial<Calibration> = {}): Calibration => ({
  id: checkedOn,
  checkedOn,
  asFound: 'in-tolerance',
  goodUntil: `${Number(checkedOn.slice(0, 4)) + 1}${checkedOn.slice(4)}`,
  certificate: null,
  struck: null,
  ...more,
});
const out = (checkedOn: string, more: Partial<Calibration> = {}) =>
  check(checkedOn, { asFound: 'out-of-tolerance', ...more });

describe('the days that lean on a test set found out of tolerance', () => {
  const found = out('2026-06-10');

  it('begin with the last calibration that left it good, whatever it had been found like', () => {
    const earlier = [check('2024-06-01'), out('2025-06-05'), found];
    expect(suspectSpan(earlier, found)).toEqual({ from: '2025-06-05', to: '2026-06-10' });
  });

  it('pass over a check that put nothing right, and one struck out', () => {
    const earlier = [
      check('2024-06-01'),
      out('2025-01-02', { goodUntil: null }),
      check('2025-06-05', { struck: 'Wrong set' }),
      found,
    ];
    expect(suspectSpan(earlier, found).from).toBe('2024-06-01');
  });

  it('have no beginning where no good calibration is known', () => {
    expect(suspectSpan([found], found)).toEqual({ from: null, to: '2026-06-10' });
    expect(suspectSpan([check('2026-06-11'), found], found).from).toBeNull();
  });

  it('go on until it is put right', () => {
    const open = out('2026-06-10', { goodUntil: null });
    expect(suspectSpan([open], open).to).toBeNull();
    expect(suspectSpan([open, check('2026-07-20'), check('2026-09-01')], open).to).toBe('2026-07-20');
    expect(suspectSpan([open, check('2026-06-10', { id: 'same day' })], open).to).toBe('2026-06-10');
  });
});
