import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { civilDateOf, dayNumber, minutesOf } from '../../libs/rules/src/time/instant.js';
import { rowOf, zoneIn } from '../../libs/rules/src/time/zone-table.js';
import {
  civilDateAt,
  isZone,
  localTimeAt,
  offsetAt,
  startOfDay,
  startOfDayAfter,
  zoneDataVersion,
} from '../../libs/rules/src/time/zones.js';

/** Zones with every kind of trouble: changes at midnight, half hours, 45 minutes, a day left out, both hemispheres. */
const zones = [
  'America/New_York',
  'America/Chicago',
  'America/Denver',
  'America/Los_Angeles',
  'America/Anchorage',
  'America/Adak',
  'America/Indiana/Indianapolis',
  'America/St_Johns',
  'America/Phoenix',
  'America/Sao_Paulo',
  'America/Havana',
  'Asia/Beirut',
  'Africa/Cairo',
  'Africa/Casablanca',
  'Australia/Lord_Howe',
  'Europe/London',
  'Pacific/Apia',
  'Pacific/Auckland',
  'Pacific/Chatham',
];

/** The reference takes its zones from this Node. What another edition says about the future is not ours to judge. */
const lastYear = process.versions['tz'] === zoneDataVersion ? 2061 : 2024;

const minuteOf = (moment: Temporal.ZonedDateTime): number => Math.floor(moment.epochMilliseconds / 60_000);
const textOf = (moment: Temporal.ZonedDateTime): string =>
  `${new Date(moment.epochMilliseconds).toISOString().slice(0, 16)}Z`;

function transitionsOf(zone: string): Temporal.ZonedDateTime[] {
  const found: Temporal.ZonedDateTime[] = [];
  let moment = Temporal.Instant.from('1990-01-01T00:00Z').toZonedDateTimeISO(zone).getTimeZoneTransition('next');
  while (moment && moment.year <= lastYear) {
    found.push(moment);
    moment = moment.getTimeZoneTransition('next');
  }
  return found;
}

describe.each(zones)('%s against Temporal', (zone) => {
  test('its row of the table says these changes and no others', () => {
    const { changes, offsets } = zoneIn(rowOf.get(zone) ?? { data: '' });
    const transitions = transitionsOf(zone);
    expect(changes.slice(0, transitions.length)).toEqual(transitions.map(minuteOf));
    expect(changes.slice(transitions.length).every((minute) => minute >= Date.UTC(lastYear + 1, 0, 1) / 60_000)).toBe(
      true,
    );
    expect(offsets.slice(1, transitions.length + 1)).toEqual(
      transitions.map((moment) => moment.offsetNanoseconds / 60e9),
    );
    expect(offsets).toHaveLength(changes.length + 1);
  });

  test('every change of offset, the minute before, at and after it', () => {
    const wrong: string[] = [];
    for (const transition of transitionsOf(zone)) {
      for (const shift of [-1, 0, 1]) {
        const moment = transition.add({ minutes: shift });
        const instant = textOf(moment);
        if (offsetAt(zone, minuteOf(moment)) !== moment.offsetNanoseconds / 60e9) wrong.push(`offset at ${instant}`);
        if (localTimeAt(instant, zone) !== moment.toPlainDateTime().toString().slice(0, 16))
          wrong.push(`clock at ${instant}`);
        if (civilDateAt(instant, zone) !== moment.toPlainDate().toString()) wrong.push(`date at ${instant}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test('the start of every day within two of a change', () => {
    const wrong: string[] = [];
    for (const transition of transitionsOf(zone)) {
      const day = dayNumber(transition.toPlainDate().toString());
      for (let near = day - 2; near <= day + 2; near += 1) {
        const date = civilDateOf(near);
        const expected = textOf(Temporal.PlainDate.from(date).toZonedDateTime(zone));
        if (startOfDay(date, zone) !== expected) wrong.push(`${date}: ${startOfDay(date, zone)}, not ${expected}`);
        if (startOfDayAfter(civilDateOf(near - 1), zone) !== startOfDay(date, zone)) wrong.push(`after ${date}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test('the offset of every third day, so that no change is there that should not be', () => {
    const wrong: string[] = [];
    let moment = Temporal.Instant.from('1990-01-01T00:00Z').toZonedDateTimeISO(zone);
    while (moment.year <= lastYear) {
      if (offsetAt(zone, minuteOf(moment)) !== moment.offsetNanoseconds / 60e9) wrong.push(moment.toString());
      moment = moment.add({ hours: 72 });
    }
    expect(wrong).toEqual([]);
  });
});

describe('days that zones made strange', () => {
  test('a day that begins at one o’clock: Cairo, 25 April 2025', () => {
    expect(startOfDay('2025-04-25', 'Africa/Cairo')).toBe('2025-04-24T22:00Z');
    expect(localTimeAt('2025-04-24T22:00Z', 'Africa/Cairo')).toBe('2025-04-25T01:00');
  });

  test('a day that was left out starts where the next one does: Apia, 30 December 2011', () => {
    expect(startOfDay('2011-12-30', 'Pacific/Apia')).toBe(startOfDay('2011-12-31', 'Pacific/Apia'));
    expect(startOfDayAfter('2011-12-29', 'Pacific/Apia')).toBe('2011-12-30T10:00Z');
  });

  test('0901Z is the evening before in Honolulu and in the dead of night on the east coast', () => {
    expect(localTimeAt('2026-02-19T09:01Z', 'Pacific/Honolulu')).toBe('2026-02-18T23:01');
    expect(localTimeAt('2026-02-19T09:01Z', 'America/New_York')).toBe('2026-02-19T04:01');
    expect(localTimeAt('2026-07-09T09:01Z', 'America/New_York')).toBe('2026-07-09T05:01');
    expect(localTimeAt('2026-02-19T09:01Z', 'America/Los_Angeles')).toBe('2026-02-19T01:01');
    expect(localTimeAt('2026-02-19T09:01Z', 'America/Anchorage')).toBe('2026-02-19T00:01');
  });

  test('before and after the table the first and last offsets hold', () => {
    expect(offsetAt('America/Denver', minutesOf('1950-07-01T00:00Z'))).toBe(-420);
    expect(offsetAt('America/Denver', minutesOf('2200-07-01T00:00Z'))).toBe(-420);
    expect(offsetAt('UTC', 0)).toBe(0);
  });

  test('every United States zone is known, and an invented one is not', () => {
    const names =
      'New_York Chicago Denver Phoenix Los_Angeles Boise Detroit Anchorage Adak Indiana/Indianapolis Puerto_Rico';
    const pacific = ['Pacific/Honolulu', 'Pacific/Guam', 'Pacific/Pago_Pago'];
    expect([...names.split(' ').map((name) => `America/${name}`), ...pacific].filter((name) => !isZone(name))).toEqual(
      [],
    );
    expect(isZone('America/Nowhere')).toBe(false);
    expect(() => startOfDay('2026-01-01', 'America/Nowhere')).toThrow(/zone/);
  });
});
