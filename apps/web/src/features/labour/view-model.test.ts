import { describe, expect, it } from 'vitest';
import { differs, draftOf, inputOf, wrongIn } from './view-model.js';
import type { LabourDraft, Typed } from './view-model.js';

const table = {
  version: 3,
  hourly: 95.5,
  currency: 'Kr',
  jobs: [
    { job: 'vor-check', own: true, hours: { low: 0.1, typical: 0.2, high: 1 }, parts: null },
    { job: 'elt-battery', own: false, hours: { low: 0.5, typical: 0.8, high: 1.5 }, parts: null },
  ],
};
const typed: Typed = { low: '1', typical: '2', high: '3', parts: '' };
const draft = (part: Partial<LabourDraft> = {}): LabourDraft => ({ ...draftOf(table), ...part });
const wrong = (part: Partial<LabourDraft>) => [...wrongIn(draft(part)).keys()];
const job = (part: Partial<Typed>) => wrong({ jobs: { weigh: { ...typed, ...part } } });

describe('the table as a person writes it', () => {
  it('begins with what the house has of its own', () => {
    expect(draftOf(table)).toEqual({
      basedOn: 3,
      hourly: '95.5',
      currency: 'Kr',
      jobs: { 'vor-check': { low: '0.1', typical: '0.2', high: '1', parts: '' } },
    });
    expect(wrongIn(draftOf(table)).size).toBe(0);
  });

  it('knows whether saving would change anything', () => {
    expect(differs(draft(), table)).toBe(false);
    expect(differs(draft({ currency: ' Kr ' }), table)).toBe(false);
    expect(differs(draft({ hourly: '96' }), table)).toBe(true);
    expect(differs(draft({ jobs: {} }), table)).toBe(true);
  });

  it('becomes what the server takes', () => {
    expect(inputOf(draft({ jobs: { weigh: { ...typed, parts: '12.5' } } }))).toEqual({
      expectedVersion: 3,
      hourly: 95.5,
      currency: 'Kr',
      jobs: [{ job: 'weigh', low: 1, typical: 2, high: 3, parts: 12.5 }],
    });
    expect(inputOf(draft({ hourly: '', currency: '', jobs: {} }))).toMatchObject({ hourly: null, currency: null });
  });
});

describe('what is wrong', () => {
  it.each([
    ['nothing', {}, []],
    ['low above typical', { low: '2.1' }, ['weigh.low']],
    ['low at typical', { low: '2' }, []],
    ['high below typical', { high: '1.9' }, ['weigh.high']],
    ['high at typical', { high: '2' }, []],
    ['no hours', { typical: '' }, ['weigh.typical']],
    ['words', { low: 'about one' }, ['weigh.low']],
    ['negative', { low: '-0.1' }, ['weigh.low']],
    ['too many', { high: '10000.1' }, ['weigh.high']],
    ['the most', { high: '10000' }, []],
    ['a price in words', { parts: 'much' }, ['weigh.parts']],
    ['a negative price', { parts: '-1' }, ['weigh.parts']],
    ['parts for nothing', { parts: '0' }, []],
  ] as const)('%s', (_name, part, expected) => {
    expect(job(part)).toEqual(expected);
  });

  it.each([
    ['0', 'Kr', ['hourly']],
    ['0.01', 'Kr', []],
    ['95', '', ['currency']],
    ['', '', []],
    ['95', 'crowns only', ['currency']],
  ])('an hour for %s %s', (hourly, currency, expected) => {
    expect(wrong({ hourly, currency })).toEqual(expected);
  });
});
