import type { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Instant } from '../time/instant.js';
import type { Refusal } from './refusal.js';

/** What `admit` may look at beside the change: never the rules. `now` is absent when nobody asks about the future. */
export interface AdmitContext {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly now: Instant | null;
}

/**
 * One kind of change. A released `apply` is frozen: other behaviour is another version.
 * `apply` is total on admitted changes and sees neither catalogue nor rules.
 */
export interface ChangeDefinition<K extends string = string, S extends z.ZodObject = z.ZodObject> {
  readonly kind: K;
  readonly version: number;
  readonly schema: S;
  /** True: the only kind that starts an aircraft. */
  readonly starts: boolean;
  readonly admit: (change: Read<S>, context: AdmitContext) => Refusal[];
  readonly apply: (dossier: Dossier, change: Read<S>) => Dossier;
}

export function defineChange<K extends string, S extends z.ZodObject>(
  definition: Omit<ChangeDefinition<K, S>, 'version' | 'starts'> & {
    readonly version?: number;
    readonly starts?: boolean;
  },
): ChangeDefinition<K, S> {
  return { version: 1, starts: false, ...definition };
}
