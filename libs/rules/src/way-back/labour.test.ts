import { describe, expect, it } from 'vitest';
import { entries, goodDay, trainer, trainerCatalogue, trainerRecords } from '../../testing/trainer.js';
import type { HouseLabour } from './labour.js';
import { defaultLabour, houseLabour, labourOf } from './labour.js';
import { wayBack } from './way-back.js';

const none: HouseLabour = { hourly: null, currency: null, jobs: {} };
const figures = { low: 1, typical: 2, high: 3, parts: null };

describe('hours and prices of a house', () => {
  it('keeps the figures of the trade where the house has none', () => {
    expect(labourOf(none)).toEqual(defaultLabour);
    const { jobs } = labourOf({ ...none, jobs: { 'vor-check': figures } });
    expect(jobs['vor-check']).toEqual({ ...figures, status: 'house-policy' });
    expect(jobs['elt-battery']).toEqual(defaultLabour.jobs['elt-battery']);
  });

  it.each([
    ['low above typical', { ...figures, low: 2.1 }, false],
    ['low at typical', { ...figures, low: 2 }, true],
    ['typical above high', { ...figures, typical: 3.1 }, false],
    ['typical at high', { ...figures, typical: 3 }, true],
    ['negative hours', { ...figures, low: -0.1 }, false],
    ['no hours at all', { low: 0, typical: 0, high: 0, parts: 0 }, true],
    ['a negative price', { ...figures, parts: -1 }, false],
  ])('%s', (_name, own, fine) => {
    expect(houseLabour.safeParse({ ...none, jobs: { 'vor-check': own } }).success).toBe(fine);
  });

  it('takes no job that it does not know, and no hour for nothing', () => {
    expect(houseLabour.safeParse({ ...none, jobs: { 'polish-the-wing': figures } }).success).toBe(false);
    expect(houseLabour.safeParse({ ...none, hourly: 0 }).success).toBe(false);
    expect(houseLabour.safeParse({ ...none, hourly: 0.01 }).success).toBe(true);
  });
});

describe('the way back with figures of the house', () => {
  const lapsed = trainer(
    entries({ without: ['vor'], and: [{ ...trainerRecords.vor, id: 'old', done: { date: '2026-01-02', at: null } }] }),
  );
  const flight = { rules: 'ifr', airspace: ['controlled'], approaches: ['vor'], topFt: 6000 } as const;
  const ask = (own: HouseLabour) =>
    wayBack(
      lapsed,
      trainerCatalogue,
      { instant: goodDay },
      { ...flight, purpose: 'private', light: 'day' },
      labourOf(own),
    );

  it('reckons in hours without a price of one, and says whose hours they are', () => {
    const [usual] = ask(none).ways;
    expect(usual).toMatchObject({ hours: { low: 0.1, typical: 0.2, high: 0.7 }, money: null });
    const [own] = ask({ ...none, jobs: { 'vor-check': figures } }).ways;
    expect(own).toMatchObject({ hours: { low: 1, typical: 2, high: 3 }, hoursRestOn: 'house-policy', money: null });
  });

  it('reckons in money with it: hours and parts', () => {
    const [way] = ask({ hourly: 90, currency: 'Kr', jobs: { 'vor-check': { ...figures, parts: 12.5 } } }).ways;
    expect(way?.money).toEqual({ low: 102.5, typical: 192.5, high: 282.5 });
  });
});
