import { equipmentType, functionCode } from './type.js';
import type { EquipmentType } from './type.js';
import { crossProblems } from './entry-checks.js';

/** An entry of the catalogue before the store gave it its id. */
export type TypeEntry = Omit<EquipmentType, 'id'>;

export type EntryProblem = {
  readonly code: EntryCode;
  /** Path of the field in the entry, dots between names; '' for the entry as a whole. */
  readonly field: string;
  readonly data: Readonly<Record<string, string | number | null>>;
};

/** What can be wrong with an entry beside the form of its fields. The words are made at the edge. */
export const entryTexts = {
  malformed: { says: '{field}: {problem}', wayOut: 'Correct the field and send it again.' },
  blank: { says: 'This holds nothing but spaces.', wayOut: 'Write what the manual says, or leave it empty.' },
  repeated: {
    says: 'This says the same again as number {first} of the list.',
    wayOut: 'Take one of the two out, or correct it.',
  },
  'function-not-had': {
    says: 'The unit does not do this itself: {function}.',
    wayOut: 'Tick it under what the unit does, or leave it out here.',
  },
  'missing-for-kind': {
    says: 'A limitation of this kind binds nothing without it.',
    wayOut: 'State at least one function as the manual names it.',
  },
  'not-for-kind': {
    says: 'A limitation of this kind does not use this.',
    wayOut: 'Leave it empty, or choose the kind that the manual means.',
  },
  'no-signals': {
    says: 'A pair without signals approves nothing.',
    wayOut: 'State the signals that the manual approves.',
  },
  'no-current': {
    says: 'Neither of the two currents is given.',
    wayOut: 'Give the current at one voltage (0 where it draws nothing), or say that the manual does not state it.',
  },
  'supply-turned-round': {
    says: 'The least voltage ({least}) is above the most ({most}).',
    wayOut: 'Give the lower of the two first.',
  },
  'speed-without-bus': {
    says: 'A line of this standard has no speed.',
    wayOut: 'Leave the speed empty, or correct the standard.',
  },
} as const;

export type EntryCode = keyof typeof entryTexts;

export type ReadEntry =
  { readonly ok: true; readonly entry: TypeEntry } | { readonly ok: false; readonly problems: readonly EntryProblem[] };

const schema = equipmentType.omit({ id: true }).strict();

/**
 * Reads an unknown value as an entry of the catalogue: the form of every field, and what fields say of each other as far as their
 * form can be read, so that a person sees all there is to mend at once.
 */
export function readEntry(sent: unknown): ReadEntry {
  const read = schema.safeParse(sent);
  if (read.success) {
    const problems = crossProblems(read.data);
    return problems.length === 0 ? { ok: true, entry: read.data } : { ok: false, problems };
  }
  const malformed = read.error.issues.map(({ path, message }): EntryProblem => {
    const field = path.join('.');
    return { code: 'malformed', field, data: { field: field || 'entry', problem: message } };
  });
  return { ok: false, problems: [...malformed, ...crossProblems(readable(sent))] };
}

/** Each field as it stands, or in its place something that nothing can be said against. */
function readable(sent: unknown): TypeEntry {
  const fields = typeof sent === 'object' && sent !== null ? (sent as Readonly<Record<string, unknown>>) : {};
  const inPlace: Readonly<Record<string, unknown>> = { functions: functionCode.options };
  return Object.fromEntries(
    Object.entries(schema.shape).map(([name, part]) => {
      const read = part.safeParse(fields[name]);
      return [name, read.success ? read.data : (inPlace[name] ?? (part.safeParse([]).success ? [] : null))];
    }),
  ) as unknown as TypeEntry;
}

/** Families on the entry's list of pairs that are none of those known: the pair counts once such a product is entered. */
export function unknownPairFamilies(
  entry: Pick<TypeEntry, 'family' | 'pairs'>,
  known: ReadonlySet<string>,
): readonly { readonly field: string; readonly family: string }[] {
  return entry.pairs.flatMap(({ family }, index) =>
    family === entry.family || known.has(family) ? [] : [{ field: `pairs.${index}.family`, family }],
  );
}
