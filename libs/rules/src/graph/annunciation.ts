import type { FunctionCode, SignalCode } from '../catalogue/type.js';
import type { Link } from '../dossier/installation.js';
import type { Chain } from './chains.js';
import type { Graph } from './facts.js';
import { feeding } from './feeding.js';
import type { UnitFacts } from './units.js';
import { mayServe } from './units.js';

/** A unit that annunciates something, with the joint over which it hears of it; null: it knows by itself. */
export interface Annunciator {
  readonly unit: UnitFacts;
  readonly link: Link | null;
}

type OfNavigator = Extract<FunctionCode, 'integrity-annunciation' | 'approach-annunciation'>;

/** By a line of its own, or within the navigator's data. */
const lines: Readonly<Record<OfNavigator, SignalCode>> = {
  'integrity-annunciation': 'integrity-flag',
  'approach-annunciation': 'approach-status',
};

/** Fitted units, in use or not, that annunciate what a navigator says of itself: its own screen, and each that it tells. */
export function annunciatorsOf(graph: Graph, own: UnitFacts, code: OfNavigator): readonly Annunciator[] {
  const told = (carries: (link: Link) => boolean) =>
    graph.links.flatMap((link): Annunciator[] => {
      const unit = graph.units.get(link.toUnit);
      return unit && link.fromUnit === own.id && carries(link) ? [{ unit, link }] : [];
    });
  const byLine = told((link) => graph.signalOf(link) === lines[code]);
  // Another navigator that hears the data speaks of itself, unless it is what shows this one's deviation.
  const byData = told((link) => graph.signalOf(link) === 'data').filter(
    ({ unit }) =>
      !unit.functions.has('gnss') || graph.chains.some((each) => each.source === own && each.indicator === unit),
  );
  return oneEach([{ unit: own, link: null }, ...byLine, ...byData], code);
}

/** The indicator that a chain shares, and the same of units that show which source it follows. Null: it follows one alone. */
export function sourceLabelsOf(
  graph: Graph,
  chain: Chain,
): { readonly indicator: UnitFacts; readonly labels: readonly Annunciator[] } | null {
  const { indicator, source } = chain;
  if (indicator === null || !isShared(graph, chain, indicator)) return null;
  const passed = passedBy(chain);
  // A source that is two in one may say itself which of them it sends, as long as it has the indicator to itself.
  const alone = feeding(graph, indicator).size <= 1 ? [source.id] : [];
  const own = [indicator.id, ...passed, ...alone].map((id) => ({ id, link: null }));
  const joined = graph.links
    .filter((link) => graph.signalOf(link) === 'source-status' && [...passed, source.id].includes(link.fromUnit))
    .map((link) => ({ id: link.toUnit, link }));
  const found = [...own, ...joined].flatMap(({ id, link }) => {
    const unit = graph.units.get(id);
    return unit ? [{ unit, link }] : [];
  });
  return { indicator, labels: oneEach(found, 'source-annunciation') };
}

/** Selectors on the way, and the indicator. */
export function passedBy({ lateral, vertical }: Chain): readonly string[] {
  return [...(lateral ?? []), ...(vertical ?? [])].map((link) => link.toUnit);
}

/** What bears on one way of annunciation and on no other of its chain. */
export function annunciationId(chain: Chain, { unit }: Annunciator, code: FunctionCode): string {
  return `${chain.id}:${unit.id}:${code}`;
}

export function inUse(annunciators: readonly Annunciator[]): readonly Annunciator[] {
  return annunciators.filter(({ unit }) => mayServe(unit));
}

/** A unit counts once, by the first joint that tells it; portable ones do not count. Those fitted for it come first: of ways that fail alike theirs is named. */
function oneEach(found: readonly Annunciator[], code: FunctionCode): readonly Annunciator[] {
  const units = new Map<string, Annunciator>();
  for (const each of found)
    if (each.unit.functions.has(code) && !each.unit.functions.has('portable-display') && !units.has(each.unit.id))
      units.set(each.unit.id, each);
  const all = [...units.values()];
  return [...all.filter(({ link }) => link !== null), ...all.filter(({ link }) => link === null)];
}

/** Fed by two units, or by one that is both a satellite and a VHF receiver. */
function isShared(graph: Graph, { source }: Chain, indicator: UnitFacts): boolean {
  const { functions } = source;
  const two = functions.has('gnss') && (functions.has('vor-receiver') || functions.has('loc-receiver'));
  return two || feeding(graph, indicator).size > 1;
}
