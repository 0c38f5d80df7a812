import { readAircraftFile } from '@tallywing/rules';
import type { AircraftFile, AircraftHistory } from '@tallywing/rules';
import { equipmentTypeId } from '../aircraft/stamp.js';
import type { UploadedFile } from './csv.js';
import type { BadRow } from './problems.js';

export const recordsKind = 'aircraft records';
const MOST_NAMED = 50;
/** Entries of one aircraft that are recorded in one go. */
const MOST_ENTRIES = 5000;

/** Aircraft with their history as another house, or this one, wrote them out; and what their entries name. */
export interface Carried {
  readonly histories: ReadonlyMap<string, CarriedAircraft>;
  readonly operators: readonly { readonly id: string; readonly name: string; readonly file: string }[];
  readonly types: AircraftFile['types'];
}

export interface CarriedAircraft extends AircraftHistory {
  readonly file: string;
  /** Where it stands in the file. */
  readonly path: string;
}

export function isJson({ name, bytes }: UploadedFile): boolean {
  return /\.json$/i.test(name) || bytes.subarray(0, 64).find((byte) => byte > 0x20) === 0x7b;
}

/** Holds each file to its documented form. Whether the entries give the record is seen when they are planned. */
export function readRecords(
  files: readonly UploadedFile[],
  bad: BadRow[],
): {
  readonly carried: Carried;
  readonly summaries: readonly { readonly name: string; readonly kind: string | null; readonly rows: number }[];
} {
  const histories = new Map<string, CarriedAircraft>();
  const operators = new Map<string, Carried['operators'][number]>();
  const types = new Map<string, Carried['types'][number]>();
  const summaries = files.map(({ name, bytes }) => {
    const tell = (path: string | null, reason: string, wayOut: string) =>
      bad.push({ file: name, line: null, column: path, value: null, reason, wayOut });
    const file = fileOf(bytes, tell);
    if (file === null) return { name, kind: null, rows: 0 };
    file.aircraft.forEach((each, at) => {
      const path = `aircraft.${at}`;
      const twice = histories.get(each.registration);
      if (twice) tell(path, `${each.registration} is also in ${twice.file}.`, 'Keep one of the two.');
      else if (each.changes.length > MOST_ENTRIES)
        tell(path, `It has more than ${MOST_ENTRIES} entries.`, 'Ask who wrote the file for a shorter history.');
      else histories.set(each.registration, { ...each, file: name, path });
    });
    for (const each of file.operators) operators.set(each.id, { ...each, file: name });
    for (const each of file.types) {
      const { id, ...body } = each.type;
      if (equipmentTypeId(body) === id) types.set(id, each);
      else tell('types', `The equipment type ${id} is not what its id says.`, 'Take the file as it was written.');
    }
    return { name, kind: recordsKind, rows: file.aircraft.length };
  });
  return { carried: { histories, operators: [...operators.values()], types: [...types.values()] }, summaries };
}

function fileOf(
  bytes: Uint8Array,
  tell: (path: string | null, reason: string, wayOut: string) => void,
): AircraftFile | null {
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    tell(null, `This is not JSON in UTF-8: ${(error as Error).message}`, 'Write the file out again and send it whole.');
    return null;
  }
  const read = readAircraftFile(value);
  if (read.ok) return read.file;
  for (const { path, says } of read.problems.slice(0, MOST_NAMED))
    tell(path === '' ? null : path, `It ${says}.`, 'Compare the file with docs/aircraft-records.schema.json.');
  return null;
}
