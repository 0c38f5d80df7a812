/** Reading and writing one place of a form's value by its path ('record.subjects.0'), without changing the value given. */
export function valueAt(value: unknown, path: string): unknown {
  return path === ''
    ? value
    : path.split('.').reduce<unknown>((at, name) => (isBranch(at) ? at[name] : undefined), value);
}

export function withValueAt<T>(value: T, path: string, next: unknown): T {
  const [first, ...rest] = path.split('.');
  if (first === undefined || first === '') return next as T;
  const inner = withValueAt(isBranch(value) ? value[first] : undefined, rest.join('.'), next);
  if (Array.isArray(value)) return value.map((each: unknown, index) => (String(index) === first ? inner : each)) as T;
  return { ...(value as object), [first]: inner } as T;
}

function isBranch(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
