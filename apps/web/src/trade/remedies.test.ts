import { changeDefinitions } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { remedyWords } from './remedies.js';

test('a remedy says what to do, in the words of the bench', () => {
  expect(remedyWords({ kind: 'do', change: 'record.add', subject: 'elt-battery', facts: [] }, {})).toBe(
    'Do and record ELT battery',
  );
  expect(remedyWords({ kind: 'do', change: 'record.add', subject: 'annual-inspection', facts: [] }, {})).toBe(
    'Do and record annual inspection',
  );
  expect(
    remedyWords({ kind: 'do', change: 'record.add', subject: 'altimeter-test:alt1', facts: [] }, { alt1: 'FH 20' }),
  ).toBe('Do and record altimeter test of FH 20');
  expect(remedyWords({ kind: 'do', change: 'hold.lift', subject: 'aircraft', facts: [] }, {})).toBe('Lift the hold');
  expect(remedyWords({ kind: 'do', change: 'hold.lift', subject: 'job:a1', facts: [] }, {})).toBe('Release the work');
  expect(remedyWords({ kind: 'do', change: 'link.connect', subject: 'n1', facts: [] }, { n1: 'Navigator 1' })).toBe(
    'Join the ports of navigator 1',
  );
});

test('the papers as a whole are no name beside the verb', () => {
  expect(remedyWords({ kind: 'do', change: 'paper.set', subject: 'papers', facts: [] }, {})).toBe(
    'Put in order and record the paper',
  );
});

test('a missing fact is something to find out', () => {
  expect(
    remedyWords(
      { kind: 'find-out', change: 'unit.amend', subject: 'n1', facts: ['configuration.units.n1.approval'] },
      { n1: 'SR 12, serial S-9' },
    ),
  ).toBe('Find out and record: unit SR 12, serial S-9: approval');
  expect(
    remedyWords(
      { kind: 'find-out', change: 'mass.note', subject: 'aircraft', facts: ['configuration.mass.changesSince'] },
      {},
    ),
  ).toBe('Find out and record: mass › what changed since it was revised');
});

test.each(changeDefinitions.map(({ kind }) => kind))('%s is words when it is advice', (kind) => {
  expect(remedyWords({ kind: 'do', change: kind, subject: 'aircraft', facts: [] }, {})).not.toMatch(/[a-z]\.[a-z]/);
});
