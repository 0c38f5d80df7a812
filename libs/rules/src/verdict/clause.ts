import type { SourceRef } from '../facts/source.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import type { Capability } from './capability.js';
import type { When } from './conditions.js';

export type Outcome = 'met' | 'not-met' | 'cannot-tell' | 'not-applicable';
export type MeterId = string;

export interface Quantity {
  readonly amount: number;
  readonly unit: string;
}

/** A reason is a region of time, hours and conditions. When it changes is computed from it, never written by a rule. */
export type Clause = Leaf | Group | Implies | Ref;

/**
 * `inside` where every stated edge holds (`from` inclusive, `before` exclusive, `atMost` inclusive, `when` matching), else `outside`.
 * A meter that nobody read, or read too long ago, makes an `atMost` leaf cannot-tell unless the limit is already passed.
 */
export interface Leaf {
  readonly is: 'leaf';
  readonly label: string;
  readonly inside: Outcome;
  readonly outside: Outcome;
  readonly from?: Instant;
  readonly before?: Instant;
  readonly atMost?: Readonly<Record<MeterId, Centihours>>;
  readonly when?: When;
  /** Record ids. */
  readonly evidence?: readonly string[];
  /** Paths of facts that nobody recorded. */
  readonly missing?: readonly string[];
  readonly value?: Quantity;
  readonly limit?: Quantity;
  readonly source?: SourceRef;
}

/** all = worst, any = best, of not-met < cannot-tell < met; not-applicable members are skipped; with none left: `ifEmpty`. */
export interface Group {
  readonly is: 'all' | 'any' | 'at-least';
  readonly n?: number;
  readonly label: string;
  readonly of: readonly Clause[];
  readonly ifEmpty: Outcome;
}

/** if not-met or not-applicable: not-applicable. if cannot-tell: met where `then` is met or not-applicable, else cannot-tell. */
export interface Implies {
  readonly is: 'implies';
  readonly if: Clause;
  readonly then: Clause;
}

/** A capability holds: how alternates and checks meet without a rule importing a rule. */
export interface Ref {
  readonly is: 'ref';
  readonly capability: Capability;
}
