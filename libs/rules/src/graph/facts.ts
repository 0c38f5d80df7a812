import type { Catalogue, EquipmentType, SignalCode } from '../catalogue/type.js';
import { signalCode } from '../catalogue/type.js';
import type { Statement } from '../dossier/common.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Antenna, Link } from '../dossier/installation.js';
import type { ListName, RecordHead, RecordKind } from '../dossier/status.js';
import { newestFirst } from '../changes/records.js';
import type { Capability } from '../verdict/capability.js';
import type { Chain } from './chains.js';
import { chainsFrom } from './chains.js';
import type { Means } from './means.js';
import { listMeans } from './means.js';
import type { UnitFacts } from './units.js';
import { mayServe } from './units.js';

/** Units and what joins them. */
export interface Graph {
  readonly units: ReadonlyMap<string, UnitFacts>;
  readonly links: readonly Link[];
  /** From sources of guidance (VOR, localizer, GNSS) to indicators. */
  readonly chains: readonly Chain[];
  readonly signalOf: (link: Link) => SignalCode | null;
}

/** One aircraft with its catalogue, looked at once. All that a rule may see. */
export interface Facts extends Graph {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly zone: string;
  readonly means: readonly Means[];
  readonly antennasOf: (unitId: string) => readonly Antenna[];
  /** Entries of a kind about a subject, newest by date performed first. */
  readonly records: (kind: RecordKind, subject: string) => readonly RecordHead[];
  /** Who stated a list complete; null: nobody, so "none" is cannot-tell. */
  readonly complete: (list: ListName) => Statement | null;
  /** Capabilities whose means pass a unit, link, antenna, chain or annunciation. */
  readonly capabilitiesThrough: (id: string) => readonly Capability[];
}

export function factsOf(dossier: Dossier, catalogue: Catalogue): Facts {
  const { configuration, status } = dossier;
  const units = new Map(
    configuration.units.map((unit): [string, UnitFacts] => {
      const type: EquipmentType | null = unit.typeId === null ? null : (catalogue.types[unit.typeId] ?? null);
      return [
        unit.id,
        {
          id: unit.id,
          unit,
          type,
          functions: new Set(type ? type.functions : unit.functions),
          active: unit.deactivated === null,
        },
      ];
    }),
  );
  const signalOf = (link: Link) =>
    portSignal(units, link.fromUnit, link.fromPort) ?? portSignal(units, link.toUnit, link.toPort);
  const antennasOf = (unitId: string) => configuration.antennas.filter((each) => each.units.includes(unitId));
  const chains = [...units.values()]
    .filter(
      (each) =>
        mayServe(each) &&
        (each.functions.has('vor-receiver') || each.functions.has('loc-receiver') || each.functions.has('gnss')),
    )
    .flatMap((each) =>
      chainsFrom(
        each,
        units,
        configuration.links,
        signalOf,
        antennasOf(each.id).map((antenna) => antenna.id),
      ),
    );
  const graph: Graph = { units, links: configuration.links, chains, signalOf };
  const means = listMeans(graph, antennasOf);
  const sorted = [...status.records].sort(newestFirst);
  return {
    dossier,
    catalogue,
    zone: configuration.aircraft.base.zone,
    ...graph,
    means,
    antennasOf,
    records: (kind, subject) => sorted.filter((each) => each.kind === kind && each.subjects.includes(subject)),
    complete: (list) => status.completeness.find((each) => each.list === list)?.stated ?? null,
    capabilitiesThrough: (id) => [
      ...new Set(means.filter((each) => each.members.includes(id)).map((each) => each.capability)),
    ],
  };
}

/** The port's signal by its type; for a unit without a type the port's name may be the signal itself. */
function portSignal(units: ReadonlyMap<string, UnitFacts>, unitId: string, portName: string): SignalCode | null {
  const type = units.get(unitId)?.type;
  if (type) return type.ports.find((each) => each.name === portName)?.signal ?? null;
  return signalCode.options.find((each) => each === portName) ?? null;
}
