import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import { assess } from '../../libs/rules/src/assess/assess.js';
import { horizon } from '../../libs/rules/src/horizon/horizon.js';
import { findingsOf } from '../../libs/rules/src/horizon/findings.js';
import { timeline } from '../../libs/rules/src/horizon/timeline.js';
import { civilDateOf, dayNumber, instantOf, minutesOf } from '../../libs/rules/src/time/instant.js';
import { approaches, strictest } from '../../libs/rules/src/verdict/conditions.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import { forget, recordedFacts } from '../../libs/rules/testing/forgetting.js';
import { goodDay, trainer, trainerCatalogue, trainerRecords } from '../../libs/rules/testing/trainer.js';
import { flight } from './clause-trees.js';

/** The trainer with its days moved, entries missing, facts unknown, holds placed, in five zones. */
const zones = ['America/Chicago', 'Pacific/Honolulu', 'Pacific/Auckland', 'Asia/Kolkata', 'UTC'] as const;

const shifted = (date: string, days: number) => civilDateOf(dayNumber(date) + days);

const fleet: fc.Arbitrary<Dossier> = fc
  .record({
    zone: fc.constantFrom(...zones),
    shifts: fc.array(fc.integer({ min: -40, max: 25 }), { minLength: 12, maxLength: 12 }),
    drop: fc.subarray(Object.keys(trainerRecords), { maxLength: 3 }),
    reading: fc.integer({ min: 404_000, max: 414_200 }),
    hold: fc.option(
      fc.record({
        from: fc.integer({ min: -3000, max: 30_000 }),
        length: fc.option(fc.integer({ min: 1, max: 20_000 })),
      }),
    ),
    next: fc.boolean(),
    seen: fc.subarray(Object.keys(trainerRecords), { minLength: 8 }),
  })
  .map(({ zone, shifts, drop, reading, hold, next, seen }) => {
    const start = minutesOf(goodDay);
    const base = trainer();
    const records = Object.entries(trainerRecords)
      .filter(([name]) => !drop.includes(name))
      .map(([name, record], index) => ({
        ...record,
        done: { date: shifted(record.done.date, shifts[index] ?? 0), at: null },
        evidence: seen.includes(name) ? record.evidence : ('reported' as const),
      }));
    const [load] = base.status.loads;
    if (!load) throw new Error('the trainer has no load');
    const second = {
      ...load,
      slot: 'next' as const,
      cycle: '2603',
      effective: '2026-03-19T09:01Z',
      expires: '2026-04-16T09:01Z',
    };
    return trainer({
      configuration: { aircraft: { base: { zone } } },
      status: {
        records: records.sort((a, b) => (a.id < b.id ? -1 : 1)),
        loads: next ? [second, load] : [load],
        holds:
          hold === null
            ? []
            : [
                {
                  id: 'h1',
                  reason: 'Panel open',
                  by: 'J. Orrell',
                  from: instantOf(start + hold.from),
                  until: hold.length === null ? null : instantOf(start + hold.from + hold.length),
                },
              ],
      },
      meters: { readings: { tach: { value: reading, asOf: '2026-03-15T20:00Z', by: 'Desk' } } },
    });
  });

const from = '2026-03-10T00:00Z';
const to = '2026-05-10T00:00Z';

describe('one aircraft with all rules', () => {
  it('has a horizon equal to asking at every edge, one minute around it, and one hundredth of an hour around each limit', () => {
    fc.assert(
      fc.property(fleet, flight, (dossier, conditions) => {
        const { windows } = horizon(dossier, trainerCatalogue, from, to, conditions);
        const edges = [...new Set(windows.flatMap((each) => [each.from, each.to]))].flatMap((each) =>
          [-1, 0, 1].map((shift) => instantOf(minutesOf(each) + shift)),
        );
        const hours = [
          ...new Set(windows.flatMap((each) => [0, each.above, each.above + 1, (each.upTo ?? 0) + 1])),
        ].filter((each) => each >= 0);
        for (const instant of edges.filter((each) => each >= from && each < to)) {
          for (const hoursAhead of hours) {
            const asked = assess(dossier, trainerCatalogue, { instant, to: instant, hoursAhead }, conditions)
              .operations['flight'];
            const covering = windows.filter(
              (each) =>
                each.from <= instant &&
                instant < each.to &&
                each.above < hoursAhead &&
                (each.upTo === null || hoursAhead <= each.upTo),
            );
            expect(covering).toHaveLength(1);
            expect(covering[0]).toMatchObject({ ready: asked?.ready, standing: asked?.standing, by: asked?.by });
            // Where nothing ends it within what was asked, the window names the hours that do.
            if (asked?.ready !== 'yes' || (asked.changesAt !== undefined && asked.changesAt < to))
              expect(covering[0]?.because).toEqual(asked?.because);
          }
        }
      }),
      { numRuns: 12, seed: 5 },
    );
  }, 120_000);

  it('judges a flight by its worst minute', () => {
    fc.assert(
      fc.property(
        fleet,
        flight,
        fc.integer({ min: 0, max: 60_000 }),
        fc.integer({ min: 1, max: 600 }),
        (dossier, conditions, after, length) => {
          const instant = instantOf(minutesOf(from) + after);
          const back = instantOf(minutesOf(instant) + length);
          const whole = assess(dossier, trainerCatalogue, { instant, to: back, hoursAhead: 100 }, conditions)
            .operations['flight']?.ready;
          const rank = { no: 0, 'cannot-tell': 1, yes: 2 } as const;
          const { windows } = horizon(dossier, trainerCatalogue, instant, instantOf(minutesOf(back) + 1), conditions);
          const during = windows
            .filter((each) => each.above < 100 && (each.upTo === null || 100 <= each.upTo))
            .map((each) => rank[each.ready]);
          expect(rank[whole ?? 'no']).toBe(Math.min(...during));
        },
      ),
      { numRuns: 50, seed: 9 },
    );
  }, 60_000);

  it('never turns yes when a recorded fact is forgotten', () => {
    const operations = (dossier: Dossier, conditions: FlightConditions) =>
      assess(dossier, trainerCatalogue, { instant: goodDay }, conditions).operations;
    fc.assert(
      fc.property(fleet, flight, fc.nat(), (dossier, conditions, pick) => {
        const facts = recordedFacts(dossier);
        const path = facts[pick % facts.length] ?? [];
        const before = operations(dossier, conditions);
        for (const [name, { ready }] of Object.entries(operations(forget(dossier, path), conditions))) {
          if (ready === 'yes') expect(before[name]?.ready, `${name} after forgetting ${path.join('.')}`).toBe('yes');
        }
      }),
      { numRuns: 150, seed: 13 },
    );
  }, 120_000);

  it('survives JSON and gives the same answer again', () => {
    fc.assert(
      fc.property(fleet, flight, (dossier, conditions) => {
        const first = assess(dossier, trainerCatalogue, { instant: goodDay, hours: 1.5 }, conditions);
        const copied = JSON.parse(JSON.stringify(dossier)) as Dossier;
        expect(JSON.parse(JSON.stringify(first))).toEqual(first);
        expect(assess(copied, trainerCatalogue, { instant: goodDay, hours: 1.5 }, conditions)).toEqual(first);
      }),
      { numRuns: 25, seed: 21 },
    );
  }, 60_000);

  it('opens findings exactly while their results are not met', () => {
    fc.assert(
      fc.property(fleet, (dossier) => {
        const findings = findingsOf(dossier, trainerCatalogue, from, to);
        const edges = [...new Set([from, ...findings.flatMap((each) => [each.opensAt, each.closesAt ?? to])])].filter(
          (each) => each >= from && each < to,
        );
        for (const instant of edges) {
          const { results } = assess(dossier, trainerCatalogue, { instant }, strictest);
          const open = findings
            .filter(
              (each) =>
                each.opensAt <= instant && (each.closesAt === null || instant < each.closesAt) && each.above < 0,
            )
            .map((each) => `${each.key} ${each.outcome}`);
          const wanted = results
            .filter((each) => each.outcome === 'not-met' || each.outcome === 'cannot-tell')
            .map((each) => `${each.key} ${each.outcome}`);
          expect(open.sort()).toEqual(wanted.sort());
        }
      }),
      { numRuns: 12, seed: 31 },
    );
  }, 60_000);

  it('draws a line without gaps along the projected use', () => {
    fc.assert(
      fc.property(fleet, flight, fc.integer({ min: 0, max: 12_000 }), (dossier, conditions, perMonth) => {
        const line = timeline(horizon(dossier, trainerCatalogue, from, to, conditions, true), perMonth);
        expect(line[0]?.from).toBe(from);
        expect(line.at(-1)?.to).toBe(to);
        for (let index = 1; index < line.length; index += 1) expect(line[index]?.from).toBe(line[index - 1]?.to);
      }),
      { numRuns: 30, seed: 37 },
    );
  }, 60_000);
});

describe('the trainer', () => {
  it('is ready for everything it has on its good day', () => {
    const asked = {
      ...strictest,
      airspace: ['controlled', 'class-b-c', 'at-or-above-10000'] as const,
      topFt: 14_000,
      overWaterBeyondGlide: false,
    };
    const { operations, results } = assess(trainer(), trainerCatalogue, { instant: goodDay }, asked);
    const open = results
      .filter((each) => each.outcome === 'not-met' || each.outcome === 'cannot-tell')
      .map((each) => `${each.key}: ${each.messageId}`);
    for (const name of ['vfr-day', 'vfr-night', 'ifr', ...approaches.map((each) => `approach-${each}`)]) {
      expect({ name, ready: operations[name]?.ready, because: operations[name]?.because, open }).toMatchObject({
        ready: 'yes',
      });
    }
  });
});
