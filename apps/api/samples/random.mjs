/** Pseudo-random numbers from a seed: the same on every machine (mulberry32, public domain). */
export function randomFrom(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (limit) => Math.floor(next() * limit);
  return { below, between: (low, high) => low + below(high - low + 1), pick: (list) => list[below(list.length)] };
}

export function dayBefore(today, days) {
  const date = new Date(`${today}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() - days);
  return date.toISOString().slice(0, 10);
}

export function monthsBefore(today, months, day) {
  const date = new Date(`${today.slice(0, 7)}-01T00:00:00Z`);
  date.setUTCMonth(date.getUTCMonth() - months);
  return `${date.toISOString().slice(0, 7)}-${String(day).padStart(2, '0')}`;
}
