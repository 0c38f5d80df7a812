import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Instant } from '../time/instant.js';
import type { Capability } from '../verdict/capability.js';
import { capabilities } from '../verdict/capability.js';
import type { Outcome } from '../verdict/clause.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Ready, Result } from '../verdict/result.js';
import { worst } from '../verdict/evaluate.js';
import { viewOf } from './assess.js';
import { systemOf } from './system.js';

/** A result that is not met or cannot be told, without its clause. */
export type OpenResult = Pick<Result, 'key' | 'ruleId' | 'subject' | 'outcome' | 'messageId' | 'data'>;

/** What `assess` answers at one moment, without reasons and without looking ahead: for comparing many aircraft. */
export interface Short {
  /** Ready for each flight, in the order asked. */
  readonly flights: readonly Ready[];
  /** Under the default conditions. */
  readonly capabilities: Readonly<Record<Capability, Outcome>>;
  /** Under any of the flights asked, by its worst outcome. */
  readonly open: readonly OpenResult[];
}

export function inShort(
  dossier: Dossier,
  catalogue: Catalogue,
  instant: Instant,
  flights: readonly Partial<FlightConditions>[],
): Short {
  const system = systemOf(dossier, catalogue);
  const view = viewOf(system, { instant });
  const asked = flights.map((each) => widenConditions(each));
  const plain = widenConditions(undefined);
  const at = (flight: FlightConditions) => view.at(instant, 0, flight);
  const seen = (asked.length === 0 ? [plain] : asked).map(at);
  return {
    flights: asked.map((flight) => at(flight).ready(flight)),
    capabilities: Object.fromEntries(
      capabilities.map((each) => [each, at(plain).capability(each)]),
    ) as Short['capabilities'],
    open: system.statements.flatMap(({ key, ruleId, subject, messages, data }, index) => {
      const outcome = worst(
        seen.map((each) => each.outcome(index)),
        'not-applicable',
      );
      return outcome === 'not-met' || outcome === 'cannot-tell'
        ? [{ key, ruleId, subject, outcome, messageId: messages[outcome], data }]
        : [];
    }),
  };
}

/** What differs between two short answers to the same flights. */
export interface Difference {
  /** Indexes into the flights asked. */
  readonly flights: readonly { readonly flight: number; readonly was: Ready; readonly is: Ready }[];
  readonly capabilities: readonly { readonly capability: Capability; readonly was: Outcome; readonly is: Outcome }[];
  readonly opened: readonly OpenResult[];
  readonly closed: readonly OpenResult[];
}

export function differenceOf(before: Short, after: Short): Difference {
  const had = new Set(before.open.map(({ key }) => key));
  const has = new Set(after.open.map(({ key }) => key));
  return {
    flights: before.flights.flatMap((was, flight) => {
      const is = after.flights[flight];
      return is === undefined || is === was ? [] : [{ flight, was, is }];
    }),
    capabilities: capabilities.flatMap((capability) => {
      const was = before.capabilities[capability];
      const is = after.capabilities[capability];
      return was === is ? [] : [{ capability, was, is }];
    }),
    opened: after.open.filter(({ key }) => !had.has(key)),
    closed: before.open.filter(({ key }) => !has.has(key)),
  };
}
