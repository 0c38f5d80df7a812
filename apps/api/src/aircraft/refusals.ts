import { refusalTexts } from '@tallywing/rules';
import type { Refusal as CoreRefusal } from '@tallywing/rules';
import type { Refusal } from '../common/errors.js';

/** The core refuses with codes and data; the words are made here. */
export function worded(refusal: CoreRefusal, change: number | null): Refusal {
  const { says, wayOut } = refusalTexts[refusal.code];
  return {
    change,
    code: refusal.code,
    field: refusal.field,
    message: fill(says, refusal.data),
    wayOut: fill(wayOut, refusal.data),
  };
}

/** Puts the data into the places written `{name}`; a place without data keeps its name, so that the gap is seen. */
export function fill(text: string, data: Readonly<Record<string, string | number | null>>): string {
  return text.replace(/\{(\w+)\}/g, (place, name: string) => {
    const value = data[name];
    return value === undefined ? place : value === null ? 'not recorded' : String(value);
  });
}
