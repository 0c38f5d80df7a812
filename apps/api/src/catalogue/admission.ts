import { entryTexts, readEntry } from '@tallywing/rules';
import type { EquipmentType, TypeEntry } from '@tallywing/rules';
import { fill } from '../aircraft/refusals.js';
import { equipmentTypeId } from '../aircraft/stamp.js';
import { instantOf } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import type { Refusal } from '../common/errors.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { typeById, versionsOf } from './catalogue.data.js';
import type { TypeRow } from './catalogue.data.js';

/** What was sent as an entry. @throws AppError REFUSED naming each bad field */
export function readBody(body: unknown): TypeEntry {
  const read = readEntry(body);
  if (read.ok) return read.entry;
  throw refused(...refusalsOf(read, null, 'body'));
}

/** Reads unknown values as catalogue entries and gives each its id. @throws AppError REFUSED */
export function readTypes(bodies: readonly unknown[]): readonly EquipmentType[] {
  const read = bodies.map(readEntry);
  const refusals = read.flatMap((each, index) => (each.ok ? [] : refusalsOf(each, index, '')));
  if (refusals.length > 0) throw refused(...refusals);
  return read.flatMap((each) => (each.ok ? [withId(each.entry)] : []));
}

/**
 * Whether the catalogue takes an entry: as a new product, or as the version after the one that the person saw.
 * @returns the entry with its id, and the versions there are
 * @throws AppError REFUSED, STALE_REVISION, NOT_FOUND
 */
export async function admitEntry(
  connection: Connection,
  actor: Actor,
  entry: TypeEntry,
  expectedId: string | null,
): Promise<{ readonly type: EquipmentType; readonly versions: readonly TypeRow[] }> {
  const type = withId(entry);
  if (expectedId === null) {
    const [taken] = await versionsOf(connection, actor.organisationId, entry.family);
    if (taken !== undefined) throw refused(familyTaken(taken));
    return { type, versions: [] };
  }
  const seen = await typeById(connection, actor.organisationId, expectedId);
  if (seen === null) throw new AppError({ code: 'NOT_FOUND', what: 'catalogue entry', field: 'input.expectedId' });
  if (seen.family !== entry.family) throw refused(familyDiffers(seen));
  const versions = await versionsOf(connection, actor.organisationId, entry.family);
  if (seen.superseded_by !== null) throw stale(versions);
  if (type.id === seen.id) throw refused(nothingChanged);
  const old = versions.find((each) => each.id === type.id);
  if (old !== undefined) throw refused(oldContent(old));
  return { type, versions };
}

function withId(entry: TypeEntry): EquipmentType {
  return { id: equipmentTypeId(entry), ...entry };
}

function refused(...refusals: readonly Refusal[]): AppError {
  return new AppError({ code: 'REFUSED', refusals });
}

function refusalsOf(
  { problems }: Extract<ReturnType<typeof readEntry>, { ok: false }>,
  change: number | null,
  at: string,
): readonly Refusal[] {
  return problems.map(({ code, field, data }) => ({
    change,
    code,
    field: [at, field].filter(Boolean).join('.'),
    message: fill(entryTexts[code].says, data),
    wayOut: entryTexts[code].wayOut,
  }));
}

function stale(versions: readonly TypeRow[]): AppError {
  const [current] = versions;
  return new AppError({
    code: 'STALE_REVISION',
    revision: versions.length,
    changedBy: current?.entered_by ?? 'somebody else',
    changedAt: instantOf(current?.created_at ?? new Date(0)),
    what: 'catalogue entry',
    kept: true,
    currentId: current?.id ?? '',
  });
}

const about = (code: string, field: string, message: string, wayOut: string): Refusal => ({
  change: null,
  code,
  field,
  message,
  wayOut,
});

const familyTaken = ({ family, maker, name }: TypeRow) =>
  about(
    'family-taken',
    'body.family',
    `The catalogue has a product of the short name ${family}: ${maker} ${name}.`,
    'Revise that entry if it is the same product, or choose another short name.',
  );

const familyDiffers = ({ family }: TypeRow) =>
  about(
    'family-differs',
    'body.family',
    `The short name of this product is ${family} and stays the same over its versions.`,
    'Leave it as it was, or enter the other product as a copy.',
  );

const nothingChanged = about(
  'nothing-changed',
  'body',
  'The entry says what it said before.',
  'Change what the manual says otherwise now, its revision at least, or leave it.',
);

const oldContent = ({ body, created_at }: TypeRow) =>
  about(
    'old-content',
    'body',
    `This is word for word an older version, ${body.document} revision ${body.revision}, entered on ${created_at.toISOString().slice(0, 10)}.`,
    'A version is never put in force again: name the document and revision that say so today.',
  );
