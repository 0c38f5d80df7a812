import { describe, expect, test } from 'vitest';
import { nextHundredHour } from '../../libs/rules/src/calculations/hundred-hour.js';
import type { Directive } from '../../libs/rules/src/dossier/status.js';
import type { Decision } from '../../libs/rules/src/dossier/upkeep.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import { inspector, mechanic, recordOf, typeOf } from '../../libs/rules/testing/builders.js';
import { entries, goodDay, trainer, trainerRecords, trainerTypes } from '../../libs/rules/testing/trainer.js';
import { said } from './said.js';

/**
 * The intervals of part 91, each at its last minute and at the next, on a well-kept trainer of which one entry is of another day. It lives in
 * Chicago: a day ends there at 06:00 UTC in winter and at 05:00 UTC in summer.
 */

const types = Object.values(trainerTypes);
type Name = keyof typeof trainerRecords;
const doneOn = (name: Name, date: string) =>
  entries({ without: [name], and: [{ ...trainerRecords[name], id: 'asked', done: { date, at: null } }] });
const vfr: Partial<FlightConditions> = { rules: 'vfr', light: 'day', purpose: 'private' };

/** Source, rule and subject, dossier, last minute, the minute after. */
const clocks = [
  [
    '91.409(a), 12 calendar months from 31 January',
    'annual-inspection',
    'aircraft',
    trainer(doneOn('annual', '2025-01-31')),
    '2026-02-01T05:59Z',
    '2026-02-01T06:00Z',
  ],
  [
    '91.409(d), the whole aircraft each 12 calendar months',
    'progressive-inspection',
    'aircraft',
    trainer(
      {
        configuration: {
          aircraft: {
            program: { kind: 'progressive', document: { title: 'Inspection procedures', revision: '4', date: null } },
          },
        },
      },
      entries({
        and: [
          recordOf({
            kind: 'progressive-complete',
            on: '2025-02-10',
            outcome: 'approved',
            agency: inspector,
            meters: [{ meter: 'tach', value: 400_000 }],
          }),
        ],
      }),
    ),
    '2026-03-01T05:59Z',
    '2026-03-01T06:00Z',
  ],
  [
    '91.327(b)(2), once every 12 calendar months',
    'condition-inspection',
    'aircraft',
    trainer(
      { configuration: { aircraft: { certificate: 'light-sport' } } },
      entries({ and: [recordOf({ kind: 'condition-inspection', on: '2026-07-05', agency: mechanic })] }),
    ),
    '2027-08-01T04:59Z',
    '2027-08-01T05:00Z',
  ],
  [
    '91.411(a)(1), static system, 24 calendar months over a leap day',
    'static-altimeter-test',
    'static-1',
    trainer(doneOn('static', '2022-02-10')),
    '2024-03-01T05:59Z',
    '2024-03-01T06:00Z',
  ],
  [
    '91.411(a)(1), altimeter, 24 calendar months',
    'static-altimeter-test',
    'alt1',
    trainer(doneOn('altimeter', '2023-02-10')),
    '2025-03-01T05:59Z',
    '2025-03-01T06:00Z',
  ],
  [
    '91.413(a), transponder, 24 calendar months',
    'transponder-test',
    'xpdr1',
    trainer(doneOn('transponder', '2023-02-10')),
    '2025-03-01T05:59Z',
    '2025-03-01T06:00Z',
  ],
  [
    '91.171(a)(2), 30 days, day D+30 inside (reading)',
    'vor-check',
    'nav1',
    trainer(doneOn('vor', '2026-01-31')),
    '2026-03-03T05:59Z',
    '2026-03-03T06:00Z',
  ],
] as const;

describe('14 CFR part 91, one interval each', () => {
  test.each(clocks)('%s', (_name, rule, subject, dossier, last, next) => {
    const at = (instant: string) => said(rule, { dossier, types, subject, at: instant, flight: { rules: 'ifr' } });
    expect([at(last), at(next)]).toEqual(['met', 'not-met']);
  });

  test('91.207(d), within 12 calendar months after the last inspection: 3 March 2026 is good through 31 March 2027', () => {
    const dossier = trainer(doneOn('locator', '2026-03-03'));
    const at = (instant: string) => said('elt', { dossier, types, at: instant, flight: vfr });
    expect([at('2027-04-01T04:59Z'), at('2027-04-01T05:00Z')]).toEqual(['met', 'not-met']);
  });
});

describe('14 CFR 91.207(c) and (f)(10)', () => {
  const battery = (hundredths: number, expires = '2028-09-30') =>
    trainer(
      {
        meters: {
          definitions: [{ id: 'on-air', name: 'Transmitter', kind: 'elt-transmitter', perFlightHour: 0, offset: 0 }],
        },
      },
      entries({
        without: ['battery'],
        and: [{ ...trainerRecords.battery, expires, meters: [{ meter: 'on-air', value: hundredths }] }],
      }),
    );
  const now = (dossier: ReturnType<typeof trainer>, at = goodDay) => said('elt', { dossier, types, at, flight: vfr });

  test('(c)(1) more than one cumulative hour: 1.00 h is allowed, 1.01 h is not', () => {
    expect([now(battery(100)), now(battery(101))]).toEqual(['met', 'not-met']);
  });

  test('(c)(2) through the day marked on the outside, on which half of the useful life is gone', () => {
    const last = (at: string) => now(battery(0, '2026-03-16'), at);
    expect([last('2026-03-17T04:59Z'), last('2026-03-17T05:00Z')]).toEqual(['met', 'not-met']);
  });

  test('(f)(10) no more than 90 days after the removal: 1 January 2026 allows 1 April', () => {
    const base = trainer();
    const removed = trainer(
      {
        configuration: {
          units: base.configuration.units.filter(({ id }) => id !== 'elt1'),
          placards: [{ id: 'p', kind: 'elt-removed', unitId: null, inView: true, text: 'ELT not installed' }],
        },
      },
      entries({
        without: ['locator', 'battery'],
        and: [
          recordOf({
            kind: 'elt-removal',
            on: '2026-01-01',
            outcome: null,
            agency: mechanic,
            note: 'EL4 serial E1 sent to the bench: no signal.',
          }),
        ],
      }),
    );
    const at = (instant: string) => now(removed, instant);
    expect([at('2026-04-02T04:59Z'), at('2026-04-02T05:00Z')]).toEqual(['met', 'not-met']);
  });
});

describe('14 CFR 91.207(a), (e) and (f): when a transmitter must be there', () => {
  const base = trainer();
  const bare = (part: { readonly seats?: number; readonly kind?: 'helicopter' } = {}) =>
    trainer(
      { configuration: { aircraft: part, units: base.configuration.units.filter(({ id }) => id !== 'elt1') } },
      entries({ without: ['locator', 'battery'] }),
    );
  const flown = (flight: Partial<FlightConditions>, dossier = bare()) =>
    said('elt', { dossier, types, at: goodDay, flight: { ...vfr, crewOnly: false, ...flight } });

  test('(a) airplanes alone', () => {
    expect([flown({}), flown({}, bare({ kind: 'helicopter' }))]).toEqual(['not-met', 'not-applicable']);
  });

  test('(a) TSO-C91 in new installations through 21 June 1995', () => {
    const fitted = (date: string) =>
      said('elt', {
        dossier: trainer({
          configuration: {
            units: base.configuration.units.map((each) =>
              each.id === 'elt1' ? { ...each, typeId: 'el0', fitted: { date, at: null } } : each,
            ),
          },
        }),
        types: [...types, typeOf({ id: 'el0', functions: ['elt'], authorisations: [{ tso: 'C91', class: null }] })],
        at: goodDay,
        flight: vfr,
      });
    expect([fitted('1995-06-21'), fitted('1995-06-22')]).toEqual(['met', 'not-met']);
  });

  test('(e) a ferry flight with the required crew alone, for one of two reasons that only the asker knows', () => {
    expect(flown({ purpose: 'ferry', crewOnly: true })).toBe('cannot-tell');
    expect(flown({ purpose: 'ferry', crewOnly: false })).toBe('not-met');
  });

  test('(f)(3) training within 50 NM of the airport where the local flight began, and no other flight', () => {
    const training = (localTrainingNm: number | null) => flown({ purpose: 'training-provided', localTrainingNm });
    expect([training(50), training(51), training(null)]).toEqual(['met', 'not-met', 'not-met']);
    expect(flown({ purpose: 'carriage-for-hire', localTrainingNm: 10 })).toBe('not-met');
  });

  test('(f)(9) equipped to carry not more than one person', () => {
    expect([flown({}, bare({ seats: 1 })), flown({}, bare({ seats: 2 }))]).toEqual(['met', 'not-met']);
  });
});

describe('hours of time in service: the tachometer stands at 4,070.00', () => {
  const lesson: Partial<FlightConditions> = { ...vfr, purpose: 'training-provided' };
  const flown = (dossier: ReturnType<typeof trainer>, hoursAhead: number) =>
    said('hundred-hour-inspection', { dossier, types, at: goodDay, hoursAhead, flight: lesson });

  test('91.409(b): done at 4,040.00, so 4,140.00 is the last hundredth', () => {
    expect([flown(trainer(), 7_000), flown(trainer(), 7_001)]).toEqual(['met', 'not-met']);
  });

  test.each([
    ['91.409(b)', 'standard'],
    ['91.327(c)', 'light-sport'],
    ['91.319(g)', 'experimental'],
  ] as const)(
    '%s, %s: done 7.3 h late on the way to the inspection, the excess counts into the next hundred',
    (_rule, certificate) => {
      const late = trainer(
        { configuration: { aircraft: { certificate } } },
        entries({
          without: ['annual', 'hundred'],
          and: [{ ...trainerRecords.hundred, enRoute: true, dueAt: 404_000 - 730 }],
        }),
      );
      expect([flown(late, 7_000 - 730), flown(late, 7_000 - 729)]).toEqual(['met', 'not-met']);
    },
  );

  test.each([
    ['due 650, done 658 en route', 650, 658, true, 750, 8, true],
    ['done early at 640', 650, 640, false, 740, 0, true],
    ['done at 660 en route: ten hours may be overflown', 650, 660, true, 750, 10, true],
    ['done at 660.01 en route: no more than ten', 650, 660.01, true, 750, 10.01, false],
    ['done at 661 en route: the limit is broken', 650, 661, true, 750, 11, false],
    ['due 1,250.0, done 1,257.3 en route', 1250, 1257.3, true, 1350, 7.3, true],
    ['due 1,250.0, flown to 1,255.0, not en route', 1250, 1255, false, 1350, 5, false],
    ['4 h beyond fall inside the next 100 (study card, secondary)', 100, 104, true, 200, 4, true],
    [
      '15 h beyond by rental alone: the next in 85, by the stricter of two readings (secondary)',
      100,
      115,
      false,
      200,
      15,
      false,
    ],
  ])('91.409(b), %s', (_name, due, done, enRoute, next, overflown, within) => {
    expect(nextHundredHour({ due, done, enRoute })).toEqual({ next, overflown, allowed: within });
  });

  test('FAA Plane Sense, 39.7: a directive to be repeated each 50 h may not be overflown, whatever the way', () => {
    const entry = recordOf({
      kind: 'directive-compliance',
      on: '2026-02-20',
      subjects: ['dir1'],
      agency: mechanic,
      meters: [{ meter: 'tach', value: 404_000 }],
    });
    const each50: Directive = {
      id: 'dir1',
      number: '2019-03-07',
      subject: 'aircraft',
      state: 'complied',
      reason: null,
      method: 'Paragraph (g)',
      partNumber: null,
      serial: null,
      recurs: true,
      interval: {
        parts: [{ kind: 'hours', count: 5_000, meter: 'tach', tolerance: null }],
        combine: 'first',
        countFrom: 'done',
        toleranceFor: 'none',
      },
      nextDue: null,
      recordId: entry.id,
    };
    const dossier = trainer({ status: { directives: [each50] } }, entries({ and: [entry] }));
    const at = (hoursAhead: number) =>
      said('directives', {
        dossier,
        types,
        subject: 'dir1',
        at: goodDay,
        hoursAhead,
        flight: { purpose: 'ferry', crewOnly: true },
      });
    expect([at(2_000), at(2_001)]).toEqual(['met', 'not-met']);
  });
});

test('part 43 appendix B(a): the copy of the form within 48 hours after the approval for return to service', () => {
  const sent = (copySentAt: string) => {
    const decision: Decision = {
      id: 'dec1',
      question: 'major-or-minor',
      subject: 'gps1',
      answer: 'major',
      reasons: 'New antenna through a pressed skin',
      by: mechanic,
      on: '2026-02-01',
      form: { executed: '2026-02-10', releasedAt: '2026-02-10T21:00Z', copySentAt },
    };
    const dossier = trainer({ status: { decisions: [decision] } });
    return said('major-alteration-decision', { dossier, types, subject: 'dec1:copy', at: goodDay });
  };
  expect(['2026-02-12T20:59Z', '2026-02-12T21:00Z', '2026-02-12T21:01Z'].map(sent)).toEqual(['met', 'met', 'not-met']);
});
