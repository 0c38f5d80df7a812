import { expect, it } from 'vitest';
import { Disk } from './disk.js';

const left = (megabytes: number): Disk =>
  new Disk('/data', () => Promise.resolve({ bavail: megabytes * 256, bsize: 4096 }));

it.each([
  [1024, { full: false, says: null }],
  [1023, { full: false, says: 'the disk of the database has 1023 MB left' }],
  [64, { full: false, says: 'the disk of the database has 64 MB left' }],
  [63, { full: true, says: 'the disk of the database has 63 MB left' }],
  [0, { full: true, says: 'the disk of the database has 0 MB left' }],
])('%s MB', async (megabytes, state) => {
  expect(await left(megabytes).state()).toEqual(state);
});

it('says nothing about a database elsewhere, and looks at a real disk', async () => {
  expect(await new Disk(null).state()).toEqual({ full: false, says: null });
  expect(await new Disk('/').free()).toBeGreaterThanOrEqual(0);
});
