/** A short id that nothing on the aircraft has yet. Random, so that two people planning at once do not meet. */
export function freshId(prefix: string): string {
  const bytes = crypto.getRandomValues(new Uint8Array(5));
  return `${prefix}-${[...bytes]
    .map((byte) => byte.toString(36).padStart(2, '0'))
    .join('')
    .slice(0, 8)}`;
}
