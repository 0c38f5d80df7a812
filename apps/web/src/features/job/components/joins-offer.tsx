import type { Dossier } from '@tallywing/rules';
import { Button } from '../../../ui/button.js';
import { countWords } from '../../../ui/words.js';
import { jointWords } from '../../../trade/units.js';
import { unitName } from '../options.js';
import type { Join } from '@tallywing/rules';

/** Free ports of a unit that was just fitted, with a partner each: one press joins them. */
export function JoinsOffer(props: {
  unitId: string;
  joins: readonly Join[];
  dossier: Dossier;
  onJoin: (joins: readonly Join[]) => void;
}) {
  const { unitId, joins, dossier, onJoin } = props;
  if (joins.length === 0) return null;
  return (
    <div className="tw-sheet tw-stack">
      <h3>Ports of {unitName(unitId, dossier)} that are still free</h3>
      <ul className="tw-owed">
        {joins.map((join) => (
          <li key={`${join.fromUnit} ${join.fromPort} ${join.toUnit} ${join.toPort}`}>
            <span>{jointWords(join, dossier.configuration.units)}</span>
            <Button onClick={() => onJoin([join])}>Join</Button>
          </li>
        ))}
      </ul>
      {joins.length > 1 && <Button onClick={() => onJoin(joins)}>Join all {countWords(joins.length, 'pair')}</Button>}
    </div>
  );
}
