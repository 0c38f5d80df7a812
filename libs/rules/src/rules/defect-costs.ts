import type { EquipmentItem } from '../dossier/aircraft.js';
import { equipmentItem } from '../dossier/aircraft.js';
import type { Defect } from '../dossier/status.js';
import type { EquipmentNeed } from '../facts/equipment.js';
import { dayItems, highAltitudeFromFt, highAltitudeItems, instrumentItems, nightItems } from '../facts/equipment.js';
import type { Facts } from '../graph/facts.js';
import { allOf, anyOf, flight, implies, notMet, ref } from '../verdict/build.js';
import type { Capability } from '../verdict/capability.js';
import type { Clause } from '../verdict/clause.js';
import type { Effect } from '../verdict/result.js';
import { cfr } from './cite.js';
import { lostThrough } from './effects.js';
import { boundBy91205, itemFitted, itemOf, itemsServedBy, whereNeeded } from './equipment-items.js';

/** What an inoperative item costs, deferred or not: only what needs it. `of` names the part. */
export interface Cost {
  readonly of: string;
  readonly clause: Clause;
  readonly effects: readonly Effect[];
}

const lists: readonly { readonly capability: Capability; readonly needs: readonly EquipmentNeed[] }[] = [
  { capability: 'fly', needs: dayItems },
  { capability: 'night', needs: nightItems },
  { capability: 'ifr-aircraft', needs: [...instrumentItems, ...highAltitudeItems] },
];
const source = cfr('91.213(d)(2)');

export function costsOf(facts: Facts, defect: Defect): readonly Cost[] {
  const unit = facts.units.get(defect.subject);
  const items = equipmentItem.options.filter(
    (each) => each === defect.subject || (unit && itemsServedBy(unit).includes(each) && !served(facts, each)),
  );
  const through = facts.capabilitiesThrough(defect.subject);
  const byUnit = {
    of: 'unit',
    clause: notMet('operable', { source }),
    effects: lostThrough(defect.subject, through),
  };
  return [...(through.length > 0 ? [byUnit] : []), ...items.flatMap((each) => costsOfItem(facts, each))];
}

function costsOfItem(facts: Facts, item: EquipmentItem): readonly Cost[] {
  return lists.flatMap(({ capability, needs }) => {
    const asked = needs.filter(
      (need) => itemOf(need) === item || (item === 'third-attitude' && need.item === 'rate-of-turn'),
    );
    if (asked.length === 0) return [];
    const clauses = asked.map((need) => whereNeeded(facts, need, lostUnless(facts, item, need)));
    return [
      {
        of: `${item}:${capability}`,
        clause: implies(boundBy91205(facts), allOf('needed', clauses, 'not-applicable')),
        effects: [{ stops: 'capability' as const, capability }],
      },
    ];
  });
}

/** Lost, unless something that the rule names stands in for it. */
function lostUnless(facts: Facts, item: EquipmentItem, need: EquipmentNeed): Clause {
  const lost = notMet(`${item}-operable`, { source: need.source });
  if (item === 'dme-or-rnav')
    return implies(
      flight('at-or-above-24000-ft', { topFt: highAltitudeFromFt.value }, { source: highAltitudeFromFt.source }),
      anyOf('dme-or-rnav', [ref('nav-gnss'), lost], 'cannot-tell'),
    );
  const other = item === 'rate-of-turn' ? 'third-attitude' : item === 'third-attitude' ? 'rate-of-turn' : null;
  return other === null || inoperative(facts, other)
    ? lost
    : anyOf('rate-of-turn-or-third-attitude', [itemFitted(facts, other, need.source), lost], 'cannot-tell');
}

/** A unit in use, without an entry that it is inoperative, still makes the item up. */
function served(facts: Facts, item: EquipmentItem): boolean {
  return [...facts.units.values()].some(
    (each) => each.active && itemsServedBy(each).includes(item) && !inoperative(facts, each.id),
  );
}

function inoperative(facts: Facts, subject: string): boolean {
  return facts.dossier.status.defects.some((each) => each.kind === 'inoperative-item' && each.subject === subject);
}
