import { codeWords } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { TypePicker } from '../../../form/type-picker.js';
import { listWords } from '../../../ui/words.js';
import { tiedTo } from '../found.js';
import { unitWords } from '../../../trade/units.js';
import type { Found } from './record-here.js';
import { RecordHere } from './record-here.js';

/** Units of which the catalogue knows nothing: each can be tied to the type that it is found to be. */
export function Tie({ found }: { found: Found }) {
  const units = found.dossier.configuration.units.filter(({ typeId }) => typeId === null);
  if (units.length === 0) return null;
  return (
    <section className="tw-sheet tw-stack" aria-labelledby="tie">
      <h2 id="tie">Uncatalogued units</h2>
      <p>
        What hangs on the manual of a unit cannot be told while its type is not in the catalogue. Enter the type there
        from its installation manual, then tie the unit to it.
      </p>
      <ul className="tw-stack">
        {units.map((unit) => (
          <li key={unit.id} className="tw-stack">
            <p>
              <strong>{unitWords(unit)}</strong>{' '}
              <span className="tw-soft">
                recorded to do: {listWords(unit.functions.map((each) => codeWords(each).toLowerCase()))}
              </span>
            </p>
            <TieUnit unitId={unit.id} found={found} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function TieUnit({ unitId, found }: { unitId: string; found: Found }) {
  const { dossier, catalogue } = found;
  const [typeId, setTypeId] = useState<string | null>(null);
  const options = useMemo(
    () =>
      Object.values(catalogue.types)
        .map((type) => ({ value: type.id, words: `${type.maker} ${type.name} (${type.partNumber})` }))
        .sort((a, b) => a.words.localeCompare(b.words)),
    [catalogue],
  );
  const change = useMemo(
    () => (typeId === null ? null : tiedTo(unitId, typeId, dossier, catalogue)),
    [unitId, typeId, dossier, catalogue],
  );
  return (
    <>
      <TypePicker options={options} value={typeId} onChange={setTypeId} />
      <RecordHere
        found={found}
        change={change}
        lacking={typeId === null ? ['the type'] : []}
        onDone={() => setTypeId(null)}
      />
    </>
  );
}
