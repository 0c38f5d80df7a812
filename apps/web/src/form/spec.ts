/**
 * Form fields from the core's schema of a change: the schema is the one home of what a change holds, so a field that is
 * added there appears here by itself.
 */
export type Spec = { readonly nullable: boolean } & (
  | { readonly kind: 'object'; readonly fields: readonly { readonly name: string; readonly spec: Spec }[] }
  | { readonly kind: 'list'; readonly of: Spec }
  /** Any number of a closed list. */
  | { readonly kind: 'many'; readonly values: readonly string[] }
  | { readonly kind: 'choice'; readonly values: readonly string[] }
  | { readonly kind: 'text'; readonly long: boolean }
  | { readonly kind: 'date' | 'instant' | 'hours' | 'yes-no' }
  | { readonly kind: 'number'; readonly whole: boolean; readonly min: number | null; readonly max: number | null }
);

/** The part of a schema object that is looked at. */
export interface SchemaLike {
  readonly def: unknown;
  safeParse(value: unknown): { readonly success: boolean };
}

interface Def {
  readonly type: string;
  readonly shape?: Readonly<Record<string, SchemaLike>>;
  readonly element?: SchemaLike;
  readonly innerType?: SchemaLike;
  readonly entries?: Readonly<Record<string, string>>;
}

/** The most hundredths of an hour that the core takes: what tells hours from other whole numbers. */
const mostCentihours = 20_000_000;

export function specOf(schema: SchemaLike, nullable = false): Spec {
  const def = schema.def as Def;
  switch (def.type) {
    case 'nullable':
      return specOf(part(def.innerType, def), true);
    case 'object':
      return {
        kind: 'object',
        nullable,
        fields: Object.entries(def.shape ?? {}).map(([name, each]) => ({ name, spec: specOf(each) })),
      };
    case 'array':
      return listSpec(part(def.element, def), nullable);
    case 'enum':
      return { kind: 'choice', nullable, values: Object.values(def.entries ?? {}) };
    case 'boolean':
      return { kind: 'yes-no', nullable };
    case 'number':
      return numberSpec(schema, nullable);
    case 'string':
      return textSpec(schema, nullable);
    default:
      throw new Error(`No form field stands for a schema of type ${def.type}; add one in spec.ts.`);
  }
}

/** An interval in hours counts in hundredths of an hour, as all hours do; its kind stands beside the number. */
export function specBeside(spec: Spec, siblings: Readonly<Record<string, unknown>>): Spec {
  return siblings.kind === 'hours' && spec.kind === 'number' && spec.whole
    ? { kind: 'hours', nullable: spec.nullable }
    : spec;
}

function listSpec(element: SchemaLike, nullable: boolean): Spec {
  const of = specOf(element);
  return of.kind === 'choice' ? { kind: 'many', nullable, values: of.values } : { kind: 'list', nullable, of };
}

function numberSpec(schema: SchemaLike, nullable: boolean): Spec {
  const { minValue, maxValue } = schema as { minValue?: number | null; maxValue?: number | null };
  const whole = !schema.safeParse((minValue ?? 0) + 0.5).success && !schema.safeParse((minValue ?? 0) + 1.5).success;
  if (whole && maxValue === mostCentihours) return { kind: 'hours', nullable };
  return { kind: 'number', nullable, whole, min: bound(minValue), max: bound(maxValue) };
}

/** Days and instants are text with a check; asking the check tells them apart without naming every field. */
function textSpec(schema: SchemaLike, nullable: boolean): Spec {
  if (!schema.safeParse('words').success) {
    if (schema.safeParse('2026-02-28').success && !schema.safeParse('2026-02-30').success)
      return { kind: 'date', nullable };
    if (schema.safeParse('2026-02-28T10:00Z').success) return { kind: 'instant', nullable };
  }
  return { kind: 'text', nullable, long: schema.safeParse('x'.repeat(3000)).success };
}

function bound(value: number | null | undefined): number | null {
  return value == null || !Number.isFinite(value) || Math.abs(value) >= Number.MAX_SAFE_INTEGER ? null : value;
}

function part(schema: SchemaLike | undefined, def: Def): SchemaLike {
  if (!schema) throw new Error(`A schema of type ${def.type} has no inner part.`);
  return schema;
}

/** A value with nothing filled in: what may be unrecorded is null, what must be given is empty. */
export function blank(spec: Spec): unknown {
  if (spec.nullable) return null;
  switch (spec.kind) {
    case 'object':
      return Object.fromEntries(spec.fields.map((field) => [field.name, blank(field.spec)]));
    case 'list':
    case 'many':
      return [];
    case 'number':
    case 'hours':
    case 'yes-no':
      return null;
    default:
      return '';
  }
}
