import { admit, apply, differenceOf, inShort, messageOf } from '@tallywing/rules';
import type { Catalogue, Change, Dossier, EquipmentType, MessageWords, OpenResult } from '@tallywing/rules';
import { worded } from '../aircraft/refusals.js';
import type { Profile } from '../aircraft/stamp.js';
import { wordsIn } from '../aircraft/words.js';

type Unit = Dossier['configuration']['units'][number];

/** So many are looked at for one question: each takes some hundredths of a second to judge twice. */
export const MOST_AIRCRAFT = 200;

/** The units of a product on one aircraft that were recorded with another version than this one. */
export function unitsToMove(dossier: Dossier, versions: ReadonlySet<string>, to: string): readonly Unit[] {
  return dossier.configuration.units.filter(({ typeId }) => typeId !== null && typeId !== to && versions.has(typeId));
}

/**
 * What it would do to one aircraft to record its units with another version: the same change, admitted and applied as it would
 * be recorded, and the same rules before and after. Pure.
 */
export function moveOf(
  dossier: Dossier,
  catalogue: Catalogue,
  to: EquipmentType,
  units: readonly Unit[],
  profiles: readonly Profile[],
  instant: string,
) {
  const after: Catalogue = { version: `${catalogue.version}+${to.id}`, types: { ...catalogue.types, [to.id]: to } };
  const refused: string[] = [];
  let moved = dossier;
  for (const unit of units) {
    const change = moveChange(unit, to);
    const refusals = admit(moved, after, change, instant);
    refused.push(...refusals.map((each) => worded(each, null)).map(({ message, wayOut }) => `${message} ${wayOut}`));
    if (refusals.length === 0) moved = apply(moved, change);
  }
  const flights = profiles.map(({ conditions }) => conditions);
  const difference = differenceOf(
    inShort(dossier, catalogue, instant, flights),
    inShort(moved, after, instant, flights),
  );
  const words = wordsIn(moved);
  return {
    refused,
    verdicts: difference.flights.flatMap(({ flight, was, is }) => {
      const profile = profiles[flight];
      return profile === undefined ? [] : [{ profile, was, is }];
    }),
    capabilities: difference.capabilities,
    opened: difference.opened.map((each) => findingOf(each, words)),
    closed: difference.closed.map((each) => findingOf(each, words)),
  };
}

/** No work was done on the aircraft: what is known of its unit is corrected. */
function moveChange(unit: Unit, to: EquipmentType): Change {
  return {
    kind: 'unit.amend',
    sameUnit: null,
    version: 1,
    unit: { ...unit, typeId: to.id },
    reason: `${to.document}, revision ${to.revision}`,
  };
}

function findingOf(each: OpenResult, words: MessageWords) {
  const { key, ruleId, outcome } = each;
  return { key, ruleId, outcome, text: messageOf(each, words) };
}

export function unitNode<Summary>(aircraft: Summary, { id, name, serial, typeId }: Unit) {
  return { aircraft, unitId: id, name, serial, typeId };
}
