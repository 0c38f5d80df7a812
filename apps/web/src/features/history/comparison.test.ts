import { expect, test } from 'vitest';
import { differingLines, notKeptWords, versionsWords } from './comparison.js';
import type { ShownAnswer } from './query.js';

const finding = (text: string, outcome: 'NOT_MET' | 'CANNOT_TELL' = 'NOT_MET') => ({
  ruleId: 'transponder-test',
  subject: 'xpdr',
  subjectName: 'OT 90 transponder',
  outcome,
  text,
});
const same: ShownAnswer = {
  entry: 12,
  at: '2026-03-09T14:05Z',
  rules: '3',
  zones: '2026a',
  flights: [{ flight: 'IFR', ready: 'YES' }],
  open: [],
  rulesNow: '3',
  zonesNow: '2026a',
  flightsDiffer: [],
  operationsDiffer: [],
  capabilitiesDiffer: [],
  opened: [],
  closed: [],
  changed: [],
};

test('where nothing differs there is no line, and the version is named', () => {
  expect(differingLines(same)).toEqual([]);
  expect(versionsWords(same)).toBe('The rules are still those of then, version 3.');
  expect(notKeptWords(same)).toBeNull();
});

test('every answer that differs is a line with what it was and what it is', () => {
  const lines = differingLines({
    ...same,
    flightsDiffer: [{ flight: 'IFR', was: 'YES', is: 'CANNOT_TELL' }],
    operationsDiffer: [{ flight: 'vfr-day', was: 'NO', is: 'YES' }],
    capabilitiesDiffer: [{ capability: 'altitude-reporting', was: 'MET', is: 'NOT_MET' }],
    opened: [finding('tested on 5 Jan 2024')],
    closed: [finding('was open')],
    changed: [{ was: finding('late'), is: finding('late', 'CANNOT_TELL') }],
  });
  expect(lines.map(({ kind, what, was, is }) => `${kind}: ${what}: ${was} / ${is}`)).toEqual([
    'flight: IFR: yes / cannot tell',
    'operation: VFR by day: no / yes',
    'capability: Report altitude: holds / does not hold',
    'finding: OT 90 transponder: was open / no finding',
    'finding: OT 90 transponder: no finding / tested on 5 Jan 2024',
    'finding: OT 90 transponder: late / cannot tell: late',
  ]);
  expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
});

test('other rules, other zone data and what was not kept are said', () => {
  expect(versionsWords({ ...same, rulesNow: '4', zonesNow: '2026b' })).toBe(
    "Judged then by version 3 of the rules; today's version is 4. The data of time zones is another one too: 2026a then, 2026b now.",
  );
  expect(notKeptWords({ ...same, operationsDiffer: null })).toContain('were not kept');
});
