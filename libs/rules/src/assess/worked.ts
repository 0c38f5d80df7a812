import type { SourceRef } from '../facts/source.js';
import type { Outcome, Quantity } from '../verdict/clause.js';
import type { Effect, Values } from '../verdict/result.js';

/**
 * What the cases of a rule's own test show of it: ids and data, put into words by the pages that show them. The rule tester writes it to
 * `libs/rules/worked/<id>.json`, as it ran, and fails where the file says anything else.
 */
export interface Worked {
  /** What it stops where it is not met or cannot tell; `ofUnit`: of the unit, joint or chain concerned, not of the aircraft. */
  readonly costs: readonly Cost[];
  /** Limits that readings and quantities were held to. */
  readonly values: readonly WorkedValue[];
  readonly cases: readonly WorkedCase[];
}
export type Cost =
  | Exclude<Effect, { readonly stops: 'capability' }>
  | { readonly stops: 'capability'; readonly capability: string; readonly ofUnit: boolean };
export interface WorkedValue {
  readonly label: string;
  readonly limit: Quantity;
  readonly source: SourceRef;
}
export interface WorkedCase {
  readonly name: string;
  /** `none`: the rule says nothing here, and has no message. */
  readonly outcome: Outcome | 'none';
  readonly message: string | null;
  readonly data: Values;
}
