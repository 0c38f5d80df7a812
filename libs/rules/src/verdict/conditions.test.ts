import { describe, expect, it } from 'vitest';
import { assess } from '../assess/assess.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { defaultConditions, strictest, widenConditions } from './conditions.js';

describe('widenConditions', () => {
  it('takes the default profile where nothing is asked, and the strictest value for a field left open', () => {
    expect(widenConditions(undefined)).toEqual(defaultConditions);
    expect(widenConditions({ light: 'day' })).toEqual({ ...strictest, light: 'day' });
  });

  it('takes a flight with an approach as IFR, one without as it is asked', () => {
    expect(widenConditions({ rules: 'vfr', approaches: ['ils'] }).rules).toBe('ifr');
    expect(widenConditions({ rules: 'vfr', approaches: [] }).rules).toBe('vfr');
  });

  it('so that what binds IFR alone cannot be passed by asking for an approach under VFR', () => {
    // 91.171 binds IFR alone: the trainer's VOR check of 1 March is good through 31 March.
    const late = { instant: '2026-04-02T16:00Z' };
    const asked = { ...defaultConditions, purpose: 'private' as const, approaches: ['vor' as const] };
    const vfr = assess(trainer(), trainerCatalogue, late, { ...asked, rules: 'vfr' }).operations['flight'];
    expect(vfr).toEqual(assess(trainer(), trainerCatalogue, late, asked).operations['flight']);
    expect(vfr?.ready).toBe('no');
    expect(assess(trainer(), trainerCatalogue, { instant: goodDay }, asked).operations['flight']?.ready).toBe('yes');
  });
});
