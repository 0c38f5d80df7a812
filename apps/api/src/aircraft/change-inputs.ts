import { badInput } from '../common/errors.js';
import { changeKinds, inputShapes } from './changes.generated.js';

/**
 * Turns one ChangeInput (its enums already in the core's own words) into what the core reads as a change: kind and version
 * beside the fields, with null for every field left out.
 */
export function readChangeInput(input: Readonly<Record<string, unknown>>, index: number): unknown {
  const given = Object.entries(input).filter(([, value]) => value !== undefined && value !== null);
  const [only] = given;
  const kind = only === undefined ? undefined : changeKinds[only[0]];
  if (given.length !== 1 || only === undefined || kind === undefined) {
    throw badInput(`input.changes.${index}`, 'A change names exactly one kind.', 'Give one field of ChangeInput.');
  }
  return { kind: kind.kind, version: kind.version, ...(complete(only[1], kind.type) as object) };
}

function complete(value: unknown, type: string | undefined): unknown {
  const shape = type === undefined ? undefined : inputShapes[type];
  if (shape === undefined || value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((item) => complete(item, type));
  const fields = value as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    Object.entries(shape).map(([name, field]) => [name, complete(fields[name] ?? null, field.type)]),
  );
}
