import { z } from 'zod';
import type { EquipmentType } from '../catalogue/type.js';
import { equipmentType } from '../catalogue/type.js';
import { id, shortText } from '../catalogue/words.js';
import type { Change } from '../changes/changes.js';
import { changeDefinitions, parseChange } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import { dossier } from '../dossier/dossier.js';

/**
 * Aircraft with their whole history as one document, to hand over to another house or to keep. What an aircraft is follows from
 * its entries; the record stands beside them so that whoever reads the file can check that both agree.
 */
export const aircraftFileFormat = 'tallywing-aircraft-records';
export const aircraftFileVersion = 1;

const moment = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?Z$/, 'must be a UTC time');
const registration = z.string().regex(/^[A-Z0-9][A-Z0-9-]{1,9}$/, 'write 2 to 10 letters, digits and dashes');

/** Made when it is asked for: the browser, which never asks, need not build it. */
const anyChange = () =>
  z
    .union(
      changeDefinitions.map(({ kind, version, schema }) =>
        schema.extend({ kind: z.literal(kind), version: z.literal(version) }).meta({ id: `${kind}@${version}` }),
      ),
    )
    .meta({ id: 'Change', description: 'What happened. Each kind with the version of its form.' });

/** `change` is read kind by kind, so that a refusal names the field and not a list of what else it might have been. */
const entryOf = <C extends z.ZodType>(what: C) =>
  z.strictObject({
    number: z.int().min(1).describe('From 1, without a gap.'),
    recordedAt: moment.describe(
      'When it was recorded. Whoever takes the file in records it anew, under their own name and time.',
    ),
    by: shortText.describe('Who recorded it.'),
    change: what,
  });

const fileOf = <C extends z.ZodType>(what: C) =>
  z.strictObject({
    format: z.literal(aircraftFileFormat),
    version: z.literal(aircraftFileVersion).describe('Goes up when the form of this file changes.'),
    exportedAt: moment,
    house: shortText.describe('The shop that it comes from.'),
    aircraft: z
      .array(
        z.strictObject({
          registration,
          record: dossier.describe('Everything known about it after its last entry.'),
          entries: z.array(entryOf(what)).min(1),
        }),
      )
      .min(1),
    operators: z.array(z.strictObject({ id, name: shortText })).describe('Every operator that an entry names.'),
    types: z
      .array(z.strictObject({ type: equipmentType, supersededBy: z.string().nullable() }))
      .describe('Every version of an equipment type that an entry names; supersededBy: the version in force instead.'),
  });

export interface AircraftHistory {
  readonly registration: string;
  readonly record: Dossier;
  readonly changes: readonly Change[];
}

export interface AircraftFile {
  readonly aircraft: readonly AircraftHistory[];
  readonly operators: readonly { readonly id: string; readonly name: string }[];
  readonly types: readonly { readonly type: EquipmentType; readonly supersededBy: string | null }[];
}

/** What is wrong with a file, at a path such as `aircraft.0.entries.3.change.unit.serial`. */
export interface FileProblem {
  readonly path: string;
  readonly says: string;
}

export type ReadAircraftFile =
  | { readonly ok: true; readonly file: AircraftFile }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Holds an unknown value to the form of the file. Replays nothing: that is for whoever knows the catalogue. */
export function readAircraftFile(value: unknown): ReadAircraftFile {
  const read = fileOf(z.unknown()).safeParse(value);
  if (!read.success)
    return {
      ok: false,
      problems: read.error.issues.map(({ path, message }) => ({ path: path.join('.'), says: message })),
    };
  const problems: FileProblem[] = [];
  const aircraft = read.data.aircraft.map(({ registration: name, record, entries }, at): AircraftHistory => {
    const changes = entries.flatMap((entry, index) => {
      const path = `aircraft.${at}.entries.${index}`;
      if (entry.number !== index + 1)
        problems.push({ path: `${path}.number`, says: `must be ${index + 1}: entries are numbered without a gap` });
      const parsed = parseChange(entry.change);
      if (parsed.ok) return [parsed.change];
      for (const { field, data } of parsed.refusals)
        problems.push({
          path: `${path}.change${field === '' ? '' : `.${field}`}`,
          says: String(data['problem'] ?? `there is no kind of change ${data['kind'] ?? ''}`),
        });
      return [];
    });
    if (record.configuration.aircraft.registration !== name)
      problems.push({ path: `aircraft.${at}.registration`, says: 'must be the registration that the record has' });
    return { registration: name, record: record as Dossier, changes };
  });
  if (problems.length > 0) return { ok: false, problems };
  const { operators, types } = read.data;
  return { ok: true, file: { aircraft, operators, types: types as AircraftFile['types'] } };
}

/** The form of the file as a JSON Schema (2020-12), made from the schemas that the program itself reads with. */
export function aircraftFileSchema(): Readonly<Record<string, unknown>> {
  return {
    ...z.toJSONSchema(fileOf(anyChange()), { target: 'draft-2020-12' }),
    title: 'Aircraft records',
    description:
      'One or many aircraft with every entry of their records. Replaying the entries gives the record. null means that nobody recorded it.',
  };
}
