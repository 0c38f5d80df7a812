import type { Catalogue, Change, Dossier } from '@tallywing/rules';
import { admit, apply, changeSchema, parseChange, refusalTexts } from '@tallywing/rules';
import { inputOf } from '../../form/change-input.js';
import { problemWords } from '../../form/problems.js';
import { specOf } from '../../form/spec.js';

/** Who accepts or states something, as it is asked for: nothing of it may be left out. */
export interface Witness {
  readonly name: string;
  readonly certificate: string;
  readonly date: string;
}

export interface Acceptance extends Witness {
  /** Units and joints that are accepted. */
  readonly ticked: readonly string[];
  /** What was looked at: the entry, the form, the inspection. */
  readonly source: string;
}

export interface ListStatement extends Witness {
  readonly ticked: readonly string[];
}

/** What is still missing on a form, in words; empty: it can be recorded. */
export function lackingIn(form: Witness & { readonly ticked: readonly string[]; readonly source?: string }): string[] {
  return [
    ...(form.ticked.length === 0 ? ['tick what it is about'] : []),
    ...(form.name.trim() === '' ? ['the name'] : []),
    ...(form.certificate.trim() === '' ? ['the certificate number'] : []),
    ...(form.date === '' ? ['the day'] : []),
    ...(form.source !== undefined && form.source.trim() === '' ? ['what was looked at'] : []),
  ];
}

/** The form with words in place of what is still missing, to show beforehand what it would change. It is never recorded so. */
export function supposed<Form extends Witness & { readonly source?: string }>(form: Form, today: string): Form {
  return {
    ...form,
    name: form.name.trim() || 'somebody',
    certificate: form.certificate.trim() || 'not given',
    date: form.date || today,
    ...(form.source === undefined ? {} : { source: form.source.trim() || 'not given' }),
  };
}

/** A named person accepts units and joints as found. */
export function acceptanceOf({ ticked, source, ...witness }: Acceptance, dossier: Dossier): unknown {
  const by = statementOf(witness);
  const { units, links } = dossier.configuration;
  return {
    kind: 'adopt',
    version: 1,
    units: ticked.filter((id) => units.some((each) => each.id === id)),
    links: ticked.filter((id) => links.some((each) => each.id === id)),
    by,
    approval: {
      basis: 'as-found',
      document: { title: source.trim(), revision: null, date: null },
      approvedOn: null,
      releasedOn: null,
      permission: null,
      modelListed: null,
      grants: null,
      acceptedBy: by,
    },
  };
}

export function listsStated({ ticked, ...witness }: ListStatement): unknown {
  const stated = statementOf(witness);
  return { kind: 'completeness.state', version: 1, lists: ticked.map((list) => ({ list, stated })) };
}

/** An uncatalogued unit is found to be of a type of the catalogue, from which it then has its functions. */
export function tiedTo(unitId: string, typeId: string, dossier: Dossier, catalogue: Catalogue): unknown {
  const unit = dossier.configuration.units.find((each) => each.id === unitId);
  const type = catalogue.types[typeId];
  const reason = type ? `Found to be ${type.maker} ${type.name}` : '';
  return { kind: 'unit.amend', version: 1, unit: { ...unit, typeId, functions: [] }, sameUnit: null, reason };
}

export type Tried =
  | { readonly ok: true; readonly change: Change; readonly after: Dossier; readonly input: Record<string, unknown> }
  | { readonly ok: false; readonly says: string };

/** The same admit and apply as on the server, and the change as the server takes it. */
export function tried(value: unknown, dossier: Dossier, catalogue: Catalogue, now: string): Tried {
  const parsed = parseChange(value);
  const refusals = parsed.ok ? admit(dossier, catalogue, parsed.change, now) : parsed.refusals;
  const [first] = refusals;
  if (first) {
    const { says, wayOut } = problemWords(first, value, refusalTexts);
    return { ok: false, says: `${says} ${wayOut}` };
  }
  if (!parsed.ok) return { ok: false, says: '' };
  const { change } = parsed;
  const schema = changeSchema(change.kind);
  if (!schema) throw new Error(`The rule library knows no change of kind ${change.kind}.`);
  return {
    ok: true,
    change,
    after: apply(dossier, change),
    input: inputOf({ kind: change.kind, value }, specOf(schema)),
  };
}

function statementOf({ name, certificate, date }: Witness): { readonly asOf: string; readonly by: string } {
  return { asOf: date, by: `${name.trim()}, certificate ${certificate.trim()}` };
}
