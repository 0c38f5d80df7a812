import { changeSchema } from '@tallywing/rules';
import type { ChangeKind } from '@tallywing/rules';

/** As much of a schema as is looked at here. */
interface Schema {
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly options?: readonly string[];
  readonly element?: Schema;
  readonly unwrap?: () => Schema;
}

/**
 * The closed list of words that a field of a change takes, read off the core's own schema so that the two cannot drift.
 * `path`: names with dots between; lists are looked into by themselves.
 */
export function vocabulary<W extends string>(kind: ChangeKind, path: string): readonly W[] {
  let at: Schema | undefined = changeSchema(kind) as unknown as Schema | undefined;
  for (const name of path.split('.')) at = bare(at)?.shape?.[name];
  const words = bare(at)?.options;
  if (!words) throw new Error(`${kind} has no list of words at ${path}.`);
  return words as readonly W[];
}

function bare(schema: Schema | undefined): Schema | undefined {
  let at = schema;
  while (at && at.shape === undefined && at.options === undefined) {
    const inner = at.element ?? at.unwrap?.();
    if (inner === at || inner === undefined) return at;
    at = inner;
  }
  return at;
}
