import { createHash } from 'node:crypto';

/** JSON with the keys of every object in order, so that equal documents are equal as text whatever store they came from. */
export function canonical(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) {
    let items = '';
    for (const item of value) items += items === '' ? canonical(item) : `,${canonical(item)}`;
    return `[${items}]`;
  }
  const fields = value as Readonly<Record<string, unknown>>;
  let written = '';
  for (const name of Object.keys(fields).sort()) {
    const field = fields[name];
    if (field === undefined) continue;
    written += `${written === '' ? '' : ','}${JSON.stringify(name)}:${canonical(field)}`;
  }
  return `{${written}}`;
}

/** SHA-256 of the canonical text, in hexadecimal. */
export function contentHash(value: unknown): string {
  return textHash(canonical(value));
}

/** The same for text that is canonical already. */
export function textHash(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
