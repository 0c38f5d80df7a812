import { describe, expect, it } from 'vitest';
import { ruleBook } from './rule-book.js';
import type { MessageWords } from './message.js';
import { messageOf } from './message.js';

const words: MessageWords = {
  zone: 'America/Denver',
  names: { nav1: 'SR 12 nav/com', static1: 'Pilot static', '12.5': 'no name of a number' },
};
const said = (ruleId: string, messageId: string, data: Readonly<Record<string, string | number | null>>) =>
  messageOf({ ruleId, messageId, data }, words);

describe('a sentence of a rule', () => {
  it('has dates with the name of the month', () => {
    const text = said('annual-inspection', 'current', { done: '2026-03-04', lastGood: '2027-03-31' });
    expect(text).toContain('4 Mar 2026');
    expect(text).toContain('31 Mar 2027');
  });

  it('tells moments in the time of the base, and uses by their names', () => {
    const data = { unit: 'nav1', use: 'en-route', expires: '2026-03-19T09:01Z' };
    expect(said('navigation-data-current', 'expired', data)).toBe(
      'Navigation data of SR 12 nav/com are not in force (en route); they expired 19 Mar 2026 03:01.',
    );
    expect(said('gnss-class', 'not-approved', { unit: 'QN 20V', capability: 'approach-lnav-vnav' })).toBe(
      'QN 20V is not approved for LNAV/VNAV approach.',
    );
  });

  it('names things and entries in words, and begins with a capital', () => {
    const data = { what: 'static-leak-test', subject: 'static1', since: '2026-11-22' };
    expect(said('tests-after-change', 'owed', data)).toBe(
      'Static leak test for Pilot static: owed since the work of 22 Nov 2026.',
    );
  });

  it('leaves numbers and text as they are, and says what is not recorded', () => {
    expect(said('tests-after-change', 'owed', { what: 'vor-check', subject: 12.5, since: null })).toContain(
      ' for 12.5: ',
    );
    const data = { what: 12.5, subject: 'ID-7 Left', since: null };
    expect(said('tests-after-change', 'owed', data)).toBe('12.5 for ID-7 Left: owed since the work of not recorded.');
    for (const subject of ['2026-03-19T09:01Z', '2026-03-19', 're-wiring', 'left-hand Panel', 'approach-lpv', 'gnss'])
      expect(said('tests-after-change', 'owed', { ...data, subject })).toContain(` for ${subject}: `);
  });

  it("takes a directive's number for no day, and a reason for no code", () => {
    const data = { number: '2019-03-07', reason: 're-wired', next: null, unrecorded: null };
    expect(said('directives', 'excepted', data)).toBe('Directive 2019-03-07 does not bind: re-wired');
    expect(said('directives', 'overdue', { ...data, next: '2026-03-31 or 4150 h' })).toBe(
      'Directive 2019-03-07 is not done again by 31 Mar 2026 or 4150 h.',
    );
  });

  it('says a change of weight as somebody wrote it', () => {
    const data = { revisedOn: '2024-02-01', change: 're-wiring' };
    expect(said('equipment-list-current', 'revise', data)).toContain('does not hold every change: re-wiring.');
  });

  it('has codes of one word with their initials, and text in their place as it is', () => {
    const data = { unit: 'nav1', port: 'FLAG', function: 'gnss' };
    expect(said('required-ports-joined', 'open', data)).toBe(
      'FLAG of SR 12 nav/com is joined to nothing, and GNSS needs it.',
    );
    const touched = { subject: 'static1', since: '2026-11-22' };
    for (const what of ['Panel left-hand', 'left-hand Panel', 'x-'])
      expect(said('tests-after-change', 'owed', { ...touched, what })).toMatch(new RegExp(`^${what}`, 'i'));
    expect(said('tests-after-change', 'owed', { ...touched, what: 'approach-lpv' })).toMatch(/^LPV approach for/);
  });

  it('says what was measured in words', () => {
    const reading = { done: '2026-02-10', what: 'equipment-frame', at: 'antenna base', value: 2.6, limit: 2.5 };
    expect(said('bonding-reading', 'outside', { ...reading, unit: 'mohm' })).toBe(
      'Equipment frame at antenna base: 2.6 milliohm, the limit is 2.5.',
    );
    expect(said('bonding-reading', 'outside', { ...reading, unit: 'ft' })).toContain('2.6 ft');
  });

  it('of every rule can be filled, whatever its data are', () => {
    for (const rule of ruleBook)
      for (const messageId of Object.keys(rule.messages))
        expect(said(rule.id, messageId, {}), `${rule.id} ${messageId}`).not.toMatch(/[{}]|^[a-z]/);
  });

  it('of a rule that is not known is named, not hidden', () => {
    expect(said('elt-inspection', 'some-thing', {})).toBe('ELT inspection: Some thing (a rule no longer in force)');
    expect(said('no-such-rule', 'lapsed', {})).toBe('No such rule: Lapsed (a rule no longer in force)');
  });
});
