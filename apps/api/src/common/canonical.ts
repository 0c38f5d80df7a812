import { createHash } from 'node:crypto';

/** JSON with the keys of every object in order, so that equal documents are equal as text whatever store they came from. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value)
      .filter(([, field]) => field !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, field]) => `${JSON.stringify(name)}:${canonical(field)}`);
    return `{${fields.join(',')}}`;
  }
  return JSON.stringify(value);
}

/** SHA-256 of the canonical text, in hexadecimal. */
export function contentHash(value: unknown): string {
  return createHash('sha256').update(canonical(value)).digest('hex');
}
