import type { z } from 'zod';

export type DeepReadonly<T> = T extends readonly (infer U)[]
  ? readonly DeepReadonly<U>[]
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T;

/** The type of a schema's value, read-only all the way down: the core never changes what it is given. */
export type Read<S extends z.ZodType> = DeepReadonly<z.infer<S>>;
