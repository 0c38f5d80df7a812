/** Files that run at the same time have numbers from 1, and each has something of its own; one that ends leaves it to the next. */
export function ofThisFile<T>(each: readonly T[]): T {
  const number = Number(process.env['VITEST_POOL_ID']);
  const own = each[number - 1];
  if (own === undefined) throw new Error(`There is nothing for test file number ${number} at once.`);
  return own;
}
