import { createHash } from 'node:crypto';

const seed = 'tallywing';

/** Whether a change belongs to a sample of so many percent: by its number in the run, so that the same run draws the same ones again. */
export function inSample({ id }, percent) {
  return createHash('sha1').update(`${seed}|${id}`).digest().readUInt32BE(0) % 100 < percent;
}

/** 95 % interval of a share by Wilson's formula, in percent. */
export function intervalOf(part, whole) {
  const z = 1.96;
  const share = part / whole;
  const middle = share + z ** 2 / (2 * whole);
  const half = z * Math.sqrt((share * (1 - share) + z ** 2 / (4 * whole)) / whole);
  return [middle - half, middle + half].map((each) => ((100 * each) / (1 + z ** 2 / whole)).toFixed(0));
}
