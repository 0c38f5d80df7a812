import { expect, it } from 'vitest';
import { added, after, catalogueOf, give } from '../../testing/changes.js';
import type { ChangeOf } from './changes.js';
import { admit, apply } from './changes.js';

const end = (saysoId: string, at: string): ChangeOf<'say-so.end'> => ({
  kind: 'say-so.end',
  version: 1,
  saysoId,
  at,
  reason: 'Found in the book',
});
const refusals = (...[dossier, change]: Parameters<typeof apply>) => admit(dossier, catalogueOf(), change);

it('the first is given where there was none, and its name is taken from then on', () => {
  expect(after([added]).status.sayings).toBeUndefined();
  const one = after([added, give('s1')]);
  expect(one.status.sayings).toEqual([give('s1').sayso]);
  expect(refusals(one, give('s1'))).toEqual([{ code: 'id-taken', field: 'sayso.id', data: { id: 's1' } }]);
  expect(refusals(one, give('s2'))).toEqual([]);
});

it('none can be ended where none was given', () => {
  expect(refusals(after([added]), end('s1', '2026-03-10T00:00Z'))).toMatchObject([
    { code: 'unknown-id', field: 'saysoId' },
  ]);
});

it('one that is ended ends alone, and is not prolonged by it', () => {
  const two = after([added, give('s1'), give('s2')]);
  const untils = (at: string) => apply(two, end('s2', at)).status.sayings?.map(({ id, until }) => [id, until]);
  expect(untils('2026-03-10T00:00Z')).toEqual([
    ['s1', '2026-04-01T00:00Z'],
    ['s2', '2026-03-10T00:00Z'],
  ]);
  expect(untils('2026-05-01T00:00Z')).toEqual([
    ['s1', '2026-04-01T00:00Z'],
    ['s2', '2026-04-01T00:00Z'],
  ]);
});
