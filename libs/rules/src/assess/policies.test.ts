import { describe, expect, it } from 'vitest';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import type { Policy } from '../catalogue/policy.js';
import { stretchesOf } from '../catalogue/policy.js';
import { holdOfJob } from '../dossier/hold.js';
import { dueItemsOf } from '../horizon/due.js';
import { horizon } from '../horizon/horizon.js';
import { assess } from './assess.js';
import { readingEnds, readingGoodForDays } from './meters.js';

const ask = (dossier = trainer(), policies?: readonly Policy[], at = goodDay) =>
  assess(dossier, policies ? { ...trainerCatalogue, policies } : trainerCatalogue, { instant: at });
const hold = (id: string, reason: string) =>
  ({ id, reason, by: 'J. Orrell', from: '2026-03-16T15:00Z', until: null }) as const;
const readingAge = (version: number, from: string, days: number): Policy => ({
  kind: 'reading-age',
  version,
  from,
  body: { days, noticeDays: null },
});
const weak = (from: string, ...statuses: readonly ('from-memory' | 'common-practice' | 'reading')[]): Policy => ({
  kind: 'weak-source',
  version: 1,
  from,
  body: { statuses: [...statuses], by: ['manager'] },
});

describe('holds', () => {
  it('make every flight a no, with the reason of the hold before all others', () => {
    const held = trainer({ status: { holds: [hold('h1', 'Fuel smell')], records: [] } });
    for (const verdict of Object.values(ask(held).operations)) {
      expect(verdict).toMatchObject({ ready: 'no', standing: 'held' });
      expect(verdict.because[0]).toBe('held|h1');
    }
  });

  it('are told apart from work: in work while jobs alone hold it, held as soon as a person does', () => {
    const first = hold(holdOfJob('a'), 'Navigator');
    const second = hold(holdOfJob('b'), 'Transponder');
    const standing = (...holds: readonly ReturnType<typeof hold>[]) =>
      ask(trainer({ status: { holds } })).operations['flight']?.standing;
    expect(standing()).toBe('judged');
    expect(standing(first, second)).toBe('in-work');
    expect(standing(first, hold('h1', 'Fuel smell'))).toBe('held');
    const released = { ...first, until: '2026-03-16T15:30Z' };
    expect(ask(trainer({ status: { holds: [released, second] } })).operations['flight']?.standing).toBe('in-work');
    const both = { ...second, until: '2026-03-16T15:30Z' };
    expect(ask(trainer({ status: { holds: [released, both] } })).operations['flight']?.ready).toBe('yes');
  });
});

describe('policies', () => {
  it('left out and set to nothing judge alike, and those set stand with the assessment', () => {
    const without = ask();
    const empty = ask(trainer(), []);
    expect({ ...empty, of: null }).toEqual({ ...without, of: null });
    expect('policies' in without.of).toBe(false);
    const policies = [readingAge(1, '2026-01-01', 31)];
    expect(ask(trainer(), policies).of.policies).toEqual(policies);
  });

  it('count from their day, and the one set last counts where several could', () => {
    const set = [readingAge(1, '2026-01-10', 30), readingAge(2, '2026-03-01', 20), readingAge(3, '2026-02-01', 10)];
    expect(
      stretchesOf(set, 'reading-age', 'UTC').map(({ from, before, policy }) => [from, before, policy.version]),
    ).toEqual([
      ['2026-01-10T00:00Z', '2026-02-01T00:00Z', 1],
      ['2026-02-01T00:00Z', '2026-03-01T00:00Z', 3],
      ['2026-03-01T00:00Z', null, 3],
    ]);
  });
});

describe('the age of readings', () => {
  const limits = (own: number | null) => ({
    meters: {
      ...trainer().meters,
      utilisation: { perMonth: 5_000, readingGoodForDays: own },
    },
  });

  it.each([
    [null, null, 31],
    [90, null, 90],
    [null, 60, 60],
    [90, 60, 60],
    [20, 60, 20],
  ])('the aircraft states %s, the house %s: %s days', (own, house, days) => {
    expect(readingGoodForDays(limits(own), house)).toBe(days);
  });

  it('makes what hangs on hours cannot-tell when a policy cuts it short, and says when', () => {
    const dossier = trainer();
    const { zone } = dossier.configuration.aircraft.base;
    // The trainer's meters were read together on 15 March 2026 at 20:00Z.
    const [meter = ''] = Object.keys(dossier.meters.readings);
    expect(readingEnds(dossier, meter, undefined, zone)).toBe('2026-04-15T20:00Z');
    const policies = [readingAge(1, '2026-03-15', 3)];
    const end = '2026-03-18T20:00Z';
    expect(readingEnds(dossier, meter, policies, zone)).toBe(end);
    const catalogue = { ...trainerCatalogue, policies };
    const of = (at: string) => assess(dossier, catalogue, { instant: at }).operations['flight'];
    expect(of('2026-03-18T19:59Z')?.ready).toBe('yes');
    expect(of(end)?.ready).toBe('cannot-tell');
    const windows = horizon(dossier, catalogue, '2026-03-18T19:59Z', '2026-04-30T00:00Z').windows;
    expect(windows.find((each) => each.from === '2026-03-18T19:59Z' && each.above < 0)?.to).toBe(end);
    const byHours = dueItemsOf(dossier, catalogue).filter((each) => each.meter === meter);
    expect(byHours.length).toBeGreaterThan(0);
    for (const each of byHours) expect(each.readingEnds).toBe(end);
  });
});

describe('a say-so', () => {
  const flight = (dossier: ReturnType<typeof trainer>, policies: readonly Policy[], at = goodDay) =>
    ask(dossier, policies, at).operations['flight'];

  it('is wanted of a yes that rests on a doubted source, from the day of the policy', () => {
    const plain = ask().operations['flight'];
    expect(plain).toMatchObject({ ready: 'yes', weakestSource: 'from-memory' });
    const policies = [weak('2026-03-16', 'from-memory')];
    expect(flight(trainer(), policies, '2026-03-16T04:59Z')?.ready).toBe('yes');
    const asked = flight(trainer(), policies, '2026-03-16T05:00Z');
    expect(asked).toMatchObject({ ready: 'cannot-tell', standing: 'say-so' });
    expect(asked?.because.every((key) => key.startsWith('source-say-so|'))).toBe(true);
  });

  it('given for every result that wants one brings the yes back until it ends', () => {
    const policies = [weak('2026-03-01', 'from-memory')];
    const wanted = ask(trainer(), policies).results.filter(
      (each) => each.ruleId === 'source-say-so' && each.outcome === 'cannot-tell',
    );
    const sayings = wanted.map(({ data }, index) => {
      const [rule = '', subject = ''] = String(data['result']).split('|');
      return {
        id: `s${index}`,
        rule,
        subject,
        by: 'M. Tace',
        reason: 'Looked it up',
        from: '2026-03-16T15:00Z',
        until: '2026-03-17T15:00Z',
      };
    });
    const said = trainer({ status: { sayings } });
    expect(flight(said, policies)).toMatchObject({ ready: 'yes', standing: 'judged' });
    expect(flight(said, policies, '2026-03-17T14:59Z')?.ready).toBe('yes');
    expect(flight(said, policies, '2026-03-17T15:00Z')?.ready).toBe('cannot-tell');
    const oneShort = trainer({ status: { sayings: sayings.slice(1) } });
    expect(flight(oneShort, policies)?.ready).toBe('cannot-tell');
  });

  it('makes no yes of a no', () => {
    const held = trainer({ status: { holds: [hold('h1', 'Fuel smell')] } });
    expect(flight(held, [weak('2026-03-01', 'from-memory')])).toMatchObject({ ready: 'no', standing: 'held' });
  });
});
