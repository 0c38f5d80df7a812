import { ruleBook } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { messageOf, type MessageWords } from './messages.js';

const words: MessageWords = {
  when: (instant) => `<${instant}>`,
  name: (id) => (id === 'nav1' ? 'Navigator 1' : undefined),
};

test('a sentence of a rule is filled with words, not codes', () => {
  const data = { done: '2026-03-04', lastGood: '2027-03-31' };
  const text = messageOf({ ruleId: 'annual-inspection', messageId: 'current', data }, words);
  expect(text).toContain('4 Mar 2026');
  expect(text).toContain('31 Mar 2027');
});

test('every sentence of every rule can be filled, whatever its data are', () => {
  for (const rule of ruleBook) {
    for (const messageId of Object.keys(rule.messages)) {
      expect(messageOf({ ruleId: rule.id, messageId, data: {} }, words), `${rule.id} ${messageId}`).not.toMatch(/[{}]/);
    }
  }
});

test('a rule that is not known here is named, not hidden', () => {
  expect(messageOf({ ruleId: 'elt-inspection', messageId: 'some-thing', data: {} }, words)).toBe(
    'ELT inspection: Some thing',
  );
});
