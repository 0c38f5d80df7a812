import type { Spec } from './spec.js';
import { valueAt } from './tree.js';

/**
 * A change as the API takes it: codes in capitals with underscores, under the name of its kind ('unit.install' is
 * `unitInstall`). Mechanical, from the same spec that made the form.
 */
export function inputOf(
  change: { readonly kind: string; readonly value: unknown },
  spec: Spec,
): Record<string, unknown> {
  const name = change.kind.replace(/[.-](\w)/g, (_, letter: string) => letter.toUpperCase());
  return { [name]: encoded(change.value, spec) };
}

function encoded(value: unknown, spec: Spec): unknown {
  if (value === null || value === undefined) return null;
  switch (spec.kind) {
    case 'object':
      return Object.fromEntries(
        spec.fields.map(({ name, spec: inner }) => [name, encoded(valueAt(value, name), inner)]),
      );
    case 'list':
      return (value as unknown[]).map((each) => encoded(each, spec.of));
    case 'many':
      return (value as string[]).map(enumName);
    case 'choice':
      return enumName(String(value));
    default:
      return value;
  }
}

function enumName(code: string): string {
  const name = code.toUpperCase().replace(/[^A-Z0-9]/g, '_');
  return /^[0-9]/.test(name) ? `_${name}` : name;
}
