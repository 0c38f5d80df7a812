import type { EquipmentType, FunctionCode } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { InstalledUnit, Link } from '../dossier/installation.js';
import type { Touched } from '../dossier/status.js';
import type { CivilDate, Instant } from '../time/instant.js';
import { civilDateOf, dayNumber } from '../time/instant.js';
import type { AdmitContext } from './define.js';
import type { Refusal } from './refusal.js';
import { refuse } from './refusal.js';

/** A day is "in the future" only when it has begun nowhere on earth yet: the zone ahead of all is UTC+14. */
export function notInFuture(date: CivilDate | null, field: string, now: Instant | null): Refusal[] {
  if (date === null || now === null) return [];
  const latest = civilDateOf(dayNumber(now.slice(0, 10)) + (now.slice(11, 16) >= '10:00' ? 1 : 0));
  return date > latest ? [refuse('in-the-future', field, { date })] : [];
}

export function afterManufacture(date: CivilDate, field: string, dossier: Dossier): Refusal[] {
  const made = dossier.configuration.aircraft.manufactured;
  return made !== null && date < made ? [refuse('before-manufacture', field, { date, manufactured: made })] : [];
}

export function knownUnit(id: string, field: string, dossier: Dossier): Refusal[] {
  return dossier.configuration.units.some((unit) => unit.id === id) ? [] : [refuse('unknown-unit', field, { id })];
}

/** The aircraft, a unit, a static system, a 91.205 item, a directive, a recurring item: whatever may carry an entry. */
export function knownSubject(id: string, field: string, { dossier }: Pick<AdmitContext, 'dossier'>): Refusal[] {
  const { configuration, status } = dossier;
  const known =
    id === 'aircraft' ||
    configuration.units.some((each) => each.id === id) ||
    configuration.staticSystems.some((each) => each.id === id) ||
    configuration.equipment.some((each) => each.item === id) ||
    status.directives.some((each) => each.id === id) ||
    status.recurring.some((each) => each.id === id) ||
    status.lifeLimits.some((each) => each.id === id);
  return known ? [] : [refuse('unknown-subject', field, { id })];
}

/** Hours and landings are counted by a meter of this aircraft. */
export function metersOfParts(
  parts: readonly { readonly kind: string; readonly meter: string | null }[],
  field: string,
  context: Pick<AdmitContext, 'dossier'>,
): Refusal[] {
  return parts.flatMap((each, index) =>
    each.kind === 'hours' || each.kind === 'landings' ? namedMeter(each.meter, `${field}.${index}.meter`, context) : [],
  );
}

export function namedMeter(meter: string | null, field: string, { dossier }: Pick<AdmitContext, 'dossier'>): Refusal[] {
  return dossier.meters.definitions.some((each) => each.id === meter)
    ? []
    : [refuse('unknown-meter', field, { id: meter })];
}

/** Work on a unit touches at least what the unit is part of; the person may tick more, never less. */
export function touchedBy(functions: readonly FunctionCode[]): Touched[] {
  const touched = new Set<Touched>();
  for (const each of functions) {
    if (each === 'transponder') touched.add('transponder');
    if (each === 'altitude-reporting' || each === 'altimeter') touched.add('altitude-chain');
    if (each === 'altimeter') touched.add('static-system');
    if (each === 'gnss') touched.add('gnss');
    if (each === 'ads-b-out-1090' || each === 'ads-b-out-uat') touched.add('ads-b');
  }
  return [...touched];
}

export function touchesStated(stated: readonly Touched[], least: readonly Touched[], field: string): Refusal[] {
  return [
    ...touchesAgree(stated, field),
    ...least.filter((each) => !stated.includes(each)).map((each) => refuse('touch-missing', field, { touched: each })),
  ];
}

/**
 * What a joint touches for sure, by what it carries: the altitude that a transponder reports, the position that ADS-B Out sends. That an
 * altitude tapped for another unit disturbed the reporting one, the person says.
 */
export function touchedByJoint(
  joint: Pick<Link, 'fromUnit' | 'fromPort' | 'toUnit' | 'toPort'>,
  units: readonly InstalledUnit[],
  types: Readonly<Record<string, EquipmentType>>,
): Touched[] {
  const end = (unitId: string, portName: string) => {
    const found = units.find((each) => each.id === unitId);
    const type = found?.typeId == null ? undefined : types[found.typeId];
    return {
      // A port of an uncatalogued unit is called by its signal.
      signal: type?.ports.find((each) => each.name === portName)?.signal ?? portName,
      functions: found ? functionsOf(found, types) : [],
    };
  };
  const ends = [end(joint.fromUnit, joint.fromPort), end(joint.toUnit, joint.toPort)];
  const carries = (...signals: readonly string[]) => ends.some((each) => signals.includes(each.signal));
  const reports = ends.some((each) => each.functions.includes('transponder'));
  const sends = ends.some((each) => each.functions.some((one) => adsbOut.includes(one)));
  return [
    ...(carries('altitude-gray', 'altitude-serial') && reports ? (['altitude-chain'] as const) : []),
    ...(carries('position') && sends ? (['ads-b'] as const) : []),
  ];
}

const adsbOut: readonly FunctionCode[] = ['ads-b-out-1090', 'ads-b-out-uat'];

/** "Nothing" is said alone. */
export function touchesAgree(stated: readonly Touched[], field: string): Refusal[] {
  return stated.includes('nothing') && stated.length > 1 ? [refuse('touched-contradicts', field)] : [];
}

export function functionsOf(
  unit: { readonly typeId: string | null; readonly functions: readonly FunctionCode[] },
  types: Readonly<Record<string, EquipmentType>>,
): readonly FunctionCode[] {
  return unit.typeId === null ? unit.functions : (types[unit.typeId]?.functions ?? unit.functions);
}
