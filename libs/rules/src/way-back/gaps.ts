import type { AskedMoment } from '../assess/assess.js';
import { widenMoment } from '../assess/assess.js';
import type { System } from '../assess/system.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { FlightConditions } from '../verdict/conditions.js';
import type { Statement } from '../verdict/result.js';
import type { Answers, Asking, Gain } from './find-out.js';
import { answersOf, askersOf, gainOf, mostUseful, usefulness } from './find-out.js';
import type { Recording } from './recorded-by.js';
import { recordedBy } from './recorded-by.js';
import { supposing } from './supposing.js';

/** Where one has to go for a fact: to the aircraft, to its books and papers, or to a person who states or decides something. */
export const visits = ['aircraft', 'papers', 'person'] as const;
export type Visit = (typeof visits)[number];

/** A flight that the house asks about. */
export interface AskedFlight {
  readonly id: string;
  readonly conditions: FlightConditions;
}

export interface MissingFact {
  /** Path of the fact in the dossier. */
  readonly fact: string;
  /** Changes that record it, with what each is about. */
  readonly by: readonly Recording[];
  /** Flights that it would make a yes by itself, if it turned out well. */
  readonly opens: readonly string[];
  /** Keys of answers that it would settle by itself. */
  readonly settles: readonly string[];
}

/** What one visit settles: facts found in one place, most useful first, and what all of them together would change. */
export interface VisitToMake {
  readonly visit: Visit;
  readonly facts: readonly MissingFact[];
  readonly opens: readonly string[];
  readonly settles: readonly string[];
}

/** What cannot be told of an aircraft, over all flights that the house asks about. */
export interface Gaps {
  /** Keys of answers that cannot be told for one of the flights or more. */
  readonly open: readonly string[];
  /** Flights to which the answer is cannot-tell. */
  readonly flights: readonly string[];
  /** The visit that opens and settles most comes first. */
  readonly visits: readonly VisitToMake[];
  /** Units and joints that a named person may accept as found. */
  readonly acceptable: readonly string[];
}

/** Promises nothing: what it says a fact opens or settles supposes that the fact turns out well. */
export function gapsOf(
  dossier: Dossier,
  catalogue: Catalogue,
  asked: AskedMoment,
  flights: readonly AskedFlight[],
): Gaps {
  const { instant, hoursAhead } = widenMoment(asked);
  const system = systemOf(dossier, catalogue);
  const views = flights.map(({ id, conditions }): View => {
    const asking = { instant, hoursAhead, flight: conditions, operations: { flight: conditions } };
    const now = answersOf(system, asking);
    return { id, asking, now, askers: askersOf(now) };
  });
  const open = new Map(views.flatMap(({ now }) => [...now.open]));
  const missing = [...askersOf({ open })].map(([fact, statements]): MissingFact => ({
    fact,
    by: waysTo(fact, statements),
    ...gainOver(system, views, new Set([fact])),
  }));
  return {
    open: [...open.values()].map(({ key }) => key).sort(),
    flights: views.filter(({ now }) => now.ready['flight'] === 'cannot-tell').map(({ id }) => id),
    visits: visits
      .map((visit): VisitToMake => {
        const own = missing.filter(({ fact }) => visitFor(fact) === visit).sort(mostUseful);
        return { visit, facts: own, ...gainOver(system, views, new Set(own.map(({ fact }) => fact))) };
      })
      .filter((each) => each.facts.length > 0)
      .sort((a, b) => usefulness(b) - usefulness(a)),
    acceptable: acceptableIn(open.values()),
  };
}

interface View {
  readonly id: string;
  readonly asking: Asking;
  readonly now: Answers;
  readonly askers: ReturnType<typeof askersOf>;
}

/** Whoever looks at the aircraft itself sees these; everything else of the configuration stands on paper. */
const seenOnAircraft =
  /^(meters\.(?!utilisation)|status\.(loads|defects)\b|configuration\.(equipment|units|openings|antennas|placards|links|electrical|identities|staticSystems|packs)\b)/;
const stated = /^status\.(completeness|decisions|holds)\b/;
const onPaper = /\.(approval|cover)(\.|$)/;

export function visitFor(fact: string): Visit {
  if (stated.test(fact)) return 'person';
  return seenOnAircraft.test(fact) && !onPaper.test(fact) ? 'aircraft' : 'papers';
}

function gainOver(system: System, views: readonly View[], facts: ReadonlySet<string>): Gain {
  const opens: string[] = [];
  const settles = new Set<string>();
  const better = supposing(system, facts);
  for (const { id, asking, now, askers } of views) {
    // A flight that asks for none of them gains nothing.
    if (![...facts].some((fact) => askers.has(fact))) continue;
    const gain = gainOf(better, now, asking);
    if (gain.opens.includes('flight')) opens.push(id);
    for (const key of gain.settles) settles.add(key);
  }
  return { opens, settles: [...settles].sort() };
}

function waysTo(fact: string, asking: Iterable<Statement>): MissingFact['by'] {
  const remedies = [...asking].flatMap((each) => each.remedies);
  return recordedBy(
    fact,
    remedies.filter(({ facts }) => facts.includes(fact)).map(({ change, subject }) => ({ change, subject })),
  );
}

function acceptableIn(open: Iterable<Statement>): string[] {
  const found = [...open].flatMap(({ remedies }) => remedies).filter(({ change }) => change === 'adopt');
  return [...new Set(found.map(({ subject }) => subject))].sort();
}
