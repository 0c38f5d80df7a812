import { expect, it } from 'vitest';
import { rules } from '../rules/registry.js';
import { ruleBook } from './rule-book.js';

it('holds every rule with what it asks, whom it binds and where that stands', () => {
  expect(ruleBook.map(({ id }) => id)).toEqual(rules.map(({ meta }) => meta.id));
  expect(ruleBook.filter(({ asks, binds, sources }) => !asks || !binds || sources.length === 0)).toEqual([]);
});
