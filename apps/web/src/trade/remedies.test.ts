import { changeDefinitions } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { remedyWords } from './remedies.js';

test('a remedy says what to do, in the words of the bench', () => {
  expect(remedyWords({ kind: 'do', change: 'record.add', subject: 'elt-battery', facts: [] })).toBe(
    'Do and record ELT battery',
  );
  expect(remedyWords({ kind: 'do', change: 'record.add', subject: 'annual-inspection', facts: [] })).toBe(
    'Do and record annual inspection',
  );
  expect(
    remedyWords({ kind: 'do', change: 'record.add', subject: 'altimeter-test:alt1', facts: [] }, () => 'FH 20'),
  ).toBe('Do and record altimeter test of FH 20');
  expect(remedyWords({ kind: 'do', change: 'hold.lift', subject: 'aircraft', facts: [] })).toBe('Lift the hold');
  expect(remedyWords({ kind: 'do', change: 'hold.lift', subject: 'job:a1', facts: [] })).toBe('Release the work');
  expect(remedyWords({ kind: 'do', change: 'link.connect', subject: 'n1', facts: [] }, () => 'Navigator 1')).toBe(
    'Join the ports of navigator 1',
  );
});

test('a missing fact is something to find out', () => {
  expect(
    remedyWords({ kind: 'find-out', change: 'unit.amend', subject: 'n1', facts: ['configuration.units.n1.approval'] }),
  ).toBe('Find out and record: units › n1 › approval');
});

test.each(changeDefinitions.map(({ kind }) => kind))('%s is words when it is advice', (kind) => {
  expect(remedyWords({ kind: 'do', change: kind, subject: 'aircraft', facts: [] })).not.toMatch(/[a-z]\.[a-z]/);
});
