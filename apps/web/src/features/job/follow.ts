import {
  changeSchema,
  touchedByJoint,
  databaseCycle,
  interferenceTestMHz,
  judgeAltimeterTest,
  type Catalogue,
  type Dossier,
} from '@tallywing/rules';
import { blank, specOf, type Spec } from '../../form/spec.js';
import { valueAt, withValueAt } from '../../form/tree.js';
import { freshId } from './ids.js';
import { formOf, freshPathOf, touchedWith, type Start } from './kinds.js';
import type { Step } from './plan.js';

/** Which readings belong to which kind of entry. Kinds that are not here have none. */
export const readingsOf: Readonly<Record<string, string>> = {
  'altimeter-test': 'altimeter',
  'transponder-test': 'transponder',
  'vor-check': 'vor',
  'static-leak-test': 'staticLeak',
  'static-system-test': 'staticLeak',
  'altitude-correspondence-test': 'correspondence',
  'compass-swing': 'compass',
  'bonding-check': 'bonding',
  'vhf-interference-check': 'interference',
};

export function specFor(kind: string): Spec {
  const schema = changeSchema(kind);
  if (!schema) throw new Error(`The rule library knows no change of kind ${kind}.`);
  return specOf(schema);
}

/** A new step with what can be known beforehand filled in; `preset` goes on top. */
export function newStep(kind: string, given: Start, preset: Readonly<Record<string, unknown>> = {}): Step {
  let value: unknown = blank(specFor(kind));
  for (const part of [formOf(kind).start?.(given) ?? {}, preset]) value = merged(value, part);
  const idPath = freshPathOf(kind);
  if (idPath && valueAt(value, idPath) === '') value = withValueAt(value, idPath, freshId(kind.split('.')[0] ?? 'id'));
  const step = { key: freshId('step'), kind, value: kind === 'link.connect' ? withJoint(value, given) : value };
  return kind === 'database.load' && valueAt(value, 'load.cycle') === null ? withCycle(step, given.today) : step;
}

type Owed = Pick<Dossier['status']['obligations'][number], 'id' | 'what' | 'subject'>;

/** The entry that answers a test or a statement that the work calls for. */
export function entryFor({ id, what, subject }: Owed, given: Start): Step {
  if (what === 'what-was-touched') return newStep('touched.state', given, { obligationId: id });
  const step = newStep('record.add', given, { record: { subjects: [subject] } });
  return stepWith(step, 'record.kind', what, given.dossier, given.catalogue);
}

/** A step about one thing, as rules name it that ask for it; null for a kind that does not exist. */
export function stepAbout(kind: string, about: string, given: Start): Step | null {
  if (changeSchema(kind) === undefined) return null;
  const { dossier, catalogue } = given;
  const step = newStep(kind, given);
  const [what = '', of = 'aircraft'] = about.split(':');
  switch (kind) {
    case 'record.add':
      return what === '' ? step : entryFor({ id: about, what: what as Owed['what'], subject: of }, given);
    case 'record.correct':
      return stepWith(step, 'record.id', about, dossier, catalogue);
    case 'unit.amend':
      return stepWith(step, 'unit.id', about, dossier, catalogue);
    case 'database.load':
      return unitOf(dossier, what) ? stepWith(step, 'load.unitId', what, dossier, catalogue) : step;
    case 'identity.set':
      return unitOf(dossier, about) ? stepWith(step, 'identity.id', about, dossier, catalogue) : step;
    case 'equipment.state':
      return { ...step, value: withValueAt(step.value, 'items', itemsToLookAt(about, given)) };
    default:
      return step;
  }
}

/** A row for each item that is asked for; what it shows is for whoever looks. */
function itemsToLookAt(about: string, { today, by }: Start): readonly unknown[] {
  const item = specAt(specFor('equipment.state'), ['items']);
  const codes = item?.kind === 'list' ? specAt(item.of, ['item']) : undefined;
  const known = codes?.kind === 'choice' ? codes.values : [];
  return about
    .split(',')
    .filter((each) => known.includes(each))
    .map((each) => ({ item: each, state: '', unitId: null, seen: { asOf: today, by } }));
}

/** Objects are merged name by name; everything else is replaced. */
function merged(base: unknown, over: unknown): unknown {
  if (!isPlain(base) || !isPlain(over)) return over;
  return {
    ...base,
    ...Object.fromEntries(Object.entries(over).map(([name, value]) => [name, merged(base[name], value)])),
  };
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The step after a field was set, with what follows from it: a type brings its name, an entry its readings. */
export function stepWith(step: Step, path: string, next: unknown, dossier: Dossier, catalogue: Catalogue): Step {
  const value = withValueAt(step.value, path, next);
  const set = (changed: unknown): Step => ({ ...step, value: changed });
  if (step.kind === 'unit.install' && path === 'unit.typeId') return set(withType(value, catalogue));
  if (step.kind === 'link.connect') return set(withJoint(value, { dossier, catalogue }));
  if (step.kind === 'link.disconnect' && path === 'linkId') {
    const link = dossier.configuration.links.find((each) => each.id === next);
    return set(link ? withTouchedBy(value, link, { dossier, catalogue }) : value);
  }
  if (path === 'unitId' && hasTouched(value))
    return set(withTouched(value, unitOf(dossier, next)?.typeId ?? null, catalogue));
  if (step.kind === 'unit.amend' && path === 'unit.id') return set(replaced(value, 'unit', unitOf(dossier, next)));
  if (step.kind === 'record.correct' && path === 'record.id') {
    return set(
      replaced(
        value,
        'record',
        dossier.status.records.find((each) => each.id === next),
      ),
    );
  }
  if (path === 'record.kind') return set(withReadings(value, String(next), transmittersOf(dossier, catalogue)));
  if (path === 'record.readings.altimeter.testedToFt') return set(withScalePoints(value));
  if (path === 'load.cycle') return withCycleTimes({ ...step, value });
  return set(value);
}

function withType(value: unknown, catalogue: Catalogue): unknown {
  const typeId = valueAt(value, 'unit.typeId');
  const type = typeof typeId === 'string' ? catalogue.types[typeId] : undefined;
  const named = type ? withValueAt(value, 'unit.name', `${type.maker} ${type.name}`) : value;
  return withTouched(withValueAt(named, 'unit.functions', []), type?.id ?? null, catalogue);
}

function withTouched(value: unknown, typeId: string | null, catalogue: Catalogue): unknown {
  return withValueAt(value, 'touched', touchedWith(valueAt(value, 'touched') as string[], typeId, { catalogue }));
}

type Joint = Parameters<typeof touchedByJoint>[0];

/** What the joint carries it touches; what is ticked already stays. */
function withJoint(value: unknown, given: Pick<Start, 'dossier' | 'catalogue'>): unknown {
  return withTouchedBy(value, valueAt(value, 'link') as Joint, given);
}

function withTouchedBy(value: unknown, joint: Joint, { dossier, catalogue }: Pick<Start, 'dossier' | 'catalogue'>) {
  const ticked = valueAt(value, 'touched') as string[];
  const touched = touchedByJoint(joint, dossier.configuration.units, catalogue.types);
  return withValueAt(value, 'touched', [...new Set([...ticked, ...touched])]);
}

function hasTouched(value: unknown): boolean {
  return Array.isArray(valueAt(value, 'touched'));
}

function unitOf(dossier: Dossier, id: unknown): Dossier['configuration']['units'][number] | undefined {
  return dossier.configuration.units.find((each) => each.id === id);
}

function replaced(value: unknown, path: string, by: unknown): unknown {
  return by === undefined ? value : withValueAt(value, path, by);
}

function withReadings(value: unknown, kind: string, transmitters: readonly string[]): unknown {
  const wanted = readingsOf[kind];
  const spec = specFor('record.add');
  const readings = specAt(spec, ['record', 'readings']);
  if (!wanted || readings?.kind !== 'object') return withValueAt(value, 'record.readings', null);
  const own = readings.fields.find((field) => field.name === wanted);
  const empty = blank({ ...readings, nullable: false }) as Record<string, unknown>;
  const filled = withValueAt(value, 'record.readings', {
    ...empty,
    [wanted]: own ? blank({ ...own.spec, nullable: false }) : null,
  });
  if (wanted === 'compass') return withValueAt(filled, 'record.readings.compass.points', headings);
  if (wanted !== 'interference') return filled;
  const tries = transmitters.flatMap((transmitter) =>
    interferenceTestMHz.value.map((frequencyMHz) => ({ transmitter, frequencyMHz, navigationLost: null })),
  );
  return withValueAt(filled, 'record.readings.interference.points', tries);
}

/** Names of the units that transmit on VHF. */
function transmittersOf(dossier: Dossier, catalogue: Catalogue): readonly string[] {
  return dossier.configuration.units.flatMap((each) => {
    const type = each.typeId === null ? undefined : catalogue.types[each.typeId];
    return (type?.functions ?? each.functions).includes('com') ? [each.name] : [];
  });
}

/** A row every 30 degrees: the widest step that a deviation card of an airplane may have. */
const headings = Array.from({ length: 12 }, (_, n) => ({ headingDeg: n * 30, compassDeg: null }));

function specAt(spec: Spec, names: readonly string[]): Spec | undefined {
  const [name, ...rest] = names;
  if (name === undefined) return spec;
  const inner = spec.kind === 'object' ? spec.fields.find((field) => field.name === name)?.spec : undefined;
  return inner && specAt(inner, rest);
}

/** Rows for every point that the published tables ask for up to the tested altitude; points already read stay. */
function withScalePoints(value: unknown): unknown {
  const at = 'record.readings.altimeter';
  const readings = valueAt(value, at) as Parameters<typeof judgeAltimeterTest>[0];
  if (typeof readings.testedToFt !== 'number' || Math.abs(readings.testedToFt) > 60_000) return value;
  const { points } = judgeAltimeterTest({ ...readings, method: 'appendix-e-tables', scaleError: [], friction: [] });
  const asked = (what: string) =>
    points.filter((point) => point.what === what && typeof point.at === 'number').map((point) => Number(point.at));
  const rows = (have: readonly { readonly atFt: number }[], altitudes: readonly number[], field: string) =>
    altitudes.map((atFt) => have.find((row) => row.atFt === atFt) ?? { atFt, [field]: null });
  const filled = withValueAt(value, `${at}.scaleError`, rows(readings.scaleError, asked('scale-error'), 'indicatedFt'));
  return withValueAt(filled, `${at}.friction`, rows(readings.friction, asked('friction'), 'changeFt'));
}

function withCycle(step: Step, today: string): Step {
  return withCycleTimes({ ...step, value: withValueAt(step.value, 'load.cycle', databaseCycle(today).id) });
}

/** The computed times of a cycle; the provider's printed ones are typed over them. */
function withCycleTimes(step: Step): Step {
  const cycle = cycleNamed(valueAt(step.value, 'load.cycle'));
  if (!cycle) return step;
  const effective = withValueAt(step.value, 'load.effective', `${cycle.effective}T09:01Z`);
  return { ...step, value: withValueAt(effective, 'load.expires', `${cycle.next}T09:01Z`) };
}

/** '2613' names the 13th cycle of 2026. Null for a number that no cycle has. */
export function cycleNamed(id: unknown): { readonly effective: string; readonly next: string } | null {
  const found = typeof id === 'string' ? /^(\d{2})(\d{2})$/.exec(id) : null;
  if (!found) return null;
  const daysIn = (Number(found[2]) - 1) * 28;
  // Cycles of a year begin at most 27 days into it: look from there for the one that carries the number.
  for (const slack of [0, 27]) {
    const day = new Date(Date.UTC(2000 + Number(found[1]), 0, 1 + daysIn + slack)).toISOString().slice(0, 10);
    const cycle = databaseCycle(day);
    if (cycle.id === id) return cycle;
  }
  return null;
}
