import type { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import { dossierSchemaVersion } from '../dossier/dossier.js';
import type { Instant } from '../time/instant.js';
import * as aircraft from './aircraft.js';
import type { ChangeDefinition } from './define.js';
import * as fittings from './fittings.js';
import * as meter from './meter.js';
import type { Refusal } from './refusal.js';
import { refuse } from './refusal.js';
import * as papers from './papers.js';
import * as saySo from './say-so.js';
import * as unit from './unit.js';
import * as upkeep from './upkeep.js';

/** The closed list. Everything that happens to an aircraft is one of these. */
const definitions = [
  aircraft.aircraftAdd,
  aircraft.aircraftAmend,
  aircraft.authoritySet,
  aircraft.equipmentStateChange,
  aircraft.staticSystemSet,
  aircraft.workDone,
  aircraft.touchedState,
  unit.unitInstall,
  unit.unitRemove,
  unit.unitAmend,
  unit.unitDeactivate,
  unit.unitReactivate,
  fittings.linkConnect,
  fittings.linkDisconnect,
  fittings.antennaFit,
  fittings.antennaRemove,
  fittings.placardFit,
  fittings.placardRemove,
  fittings.supplementSet,
  fittings.openingSet,
  fittings.electricalSet,
  fittings.massRevise,
  fittings.massNote,
  upkeep.recordAdd,
  upkeep.recordCorrect,
  upkeep.databaseLoadChange,
  upkeep.databaseDrop,
  upkeep.defectRaise,
  upkeep.defectDefer,
  upkeep.defectClose,
  upkeep.directiveSet,
  upkeep.holdPlace,
  upkeep.holdLift,
  upkeep.completenessState,
  upkeep.adopt,
  saySo.saySoGive,
  saySo.saySoEnd,
  papers.identitySet,
  papers.recurringSet,
  papers.recurringEnd,
  papers.lifeLimitSet,
  papers.lifeLimitEnd,
  papers.paperSet,
  papers.packSet,
  papers.decisionRecord,
  meter.meterDefine,
  meter.meterRead,
  meter.meterReplace,
  meter.meterCorrect,
  meter.utilisationSet,
] as const;

type Definition = (typeof definitions)[number];
export type ChangeKind = Definition['kind'];
/** A change as it is stored: kind, version, and the fields of that kind. */
export type Change = {
  [D in Definition as D['kind']]: { readonly kind: D['kind']; readonly version: 1 } & Read<D['schema']>;
}[ChangeKind];
export type ChangeOf<K extends ChangeKind> = Extract<Change, { readonly kind: K }>;

export const changeDefinitions: readonly ChangeDefinition[] = definitions as unknown as readonly ChangeDefinition[];
const byKey = new Map(changeDefinitions.map((each) => [`${each.kind}@${each.version}`, each]));

/** The schema of one kind's fields; undefined for a kind or version that does not exist. */
export function changeSchema(kind: string, version = 1): z.ZodObject | undefined {
  return byKey.get(`${kind}@${version}`)?.schema;
}

export type Parsed =
  { readonly ok: true; readonly change: Change } | { readonly ok: false; readonly refusals: readonly Refusal[] };

/** Reads an unknown value as a change. Names each bad field; throws nothing. */
export function parseChange(value: unknown): Parsed {
  const kind = text(value, 'kind');
  const version = typeof value === 'object' && value !== null && 'version' in value ? Number(value.version) : 1;
  const definition = byKey.get(`${kind}@${version}`);
  if (!definition) return { ok: false, refusals: [refuse('unknown-kind', 'kind', { kind, version })] };
  const read = definition.schema.strict().safeParse(withoutTag(value));
  if (read.success) return { ok: true, change: { kind, version, ...read.data } as Change };
  return {
    ok: false,
    refusals: read.error.issues.map((issue) =>
      refuse('malformed', issue.path.join('.'), { field: issue.path.join('.') || kind, problem: issue.message }),
    ),
  };
}

/** A dossier before its first change. */
export function blankDossier(aircraftId: string): Dossier {
  return {
    schema: dossierSchemaVersion,
    aircraftId,
    revision: 0,
    configuration: {
      aircraft: {
        registration: 'NONE',
        serial: null,
        make: 'not recorded',
        model: 'not recorded',
        kind: 'other',
        certificate: null,
        category: null,
        basis: null,
        manufactured: null,
        engine: null,
        engineCount: null,
        engineDrivenElectrical: null,
        maxWeightLb: null,
        seats: null,
        retractableGear: null,
        liquidCooled: null,
        altitudeEngine: null,
        maxOperatingAltitudeFt: null,
        base: { id: 'none', name: 'not recorded', zone: 'UTC' },
        operatorId: null,
        program: null,
        notWanted: [],
      },
      authority: null,
      equipment: [],
      openings: [],
      units: [],
      takenOut: [],
      links: [],
      antennas: [],
      placards: [],
      supplements: [],
      staticSystems: [],
      electrical: null,
      mass: null,
      identities: [],
      papers: [],
      packs: [],
    },
    status: {
      records: [],
      obligations: [],
      defects: [],
      directives: [],
      loads: [],
      holds: [],
      completeness: [],
      recurring: [],
      lifeLimits: [],
      decisions: [],
    },
    meters: {
      definitions: [],
      timeInService: null,
      readings: {},
      utilisation: { perMonth: null, readingGoodForDays: null },
    },
  };
}

/**
 * May this change be recorded? Looks at the catalogue, the order of dates and what exists; an empty list means yes.
 * `now` (UTC) lets it refuse days that have not come; without it no date counts as future.
 */
export function admit(
  dossier: Dossier,
  catalogue: Catalogue,
  change: Change,
  now: Instant | null = null,
): readonly Refusal[] {
  const definition = byKey.get(`${change.kind}@${change.version}`);
  if (!definition) return [refuse('unknown-kind', 'kind', { kind: change.kind, version: change.version })];
  if (dossier.revision === 0 && !definition.starts) return [refuse('no-aircraft', '')];
  return definition.admit(change as never, { dossier, catalogue, now });
}

/** The dossier after an admitted change. Total on admitted changes; throws only for a kind that does not exist. */
export function apply(dossier: Dossier, change: Change): Dossier {
  const definition = byKey.get(`${change.kind}@${change.version}`);
  if (!definition)
    throw new Error(
      `There is no change of kind ${change.kind}, version ${change.version}: this program is older than the record.`,
    );
  return { ...definition.apply(dossier, change as never), revision: dossier.revision + 1 };
}

/** The dossier that a list of admitted changes gives. */
export function replay(changes: readonly Change[], aircraftId = 'aircraft'): Dossier {
  return changes.reduce(apply, blankDossier(aircraftId));
}

function text(value: unknown, name: string): string {
  const found = typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
  return typeof found === 'string' ? found : '';
}

function withoutTag(value: unknown): unknown {
  const { kind: _kind, version: _version, ...fields } = value as Record<string, unknown>;
  return fields;
}
