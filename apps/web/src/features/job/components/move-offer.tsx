import { useSearchParams } from 'react-router';
import { Button } from '../../../ui/button.js';
import type { Catalogue, Dossier } from '@tallywing/rules';
import { moveTo, type Move } from '../move.js';

export interface MoveOfferProps {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly onMove: (move: Move) => void;
}

/** What the catalogue asked for by its link: to record a unit with another version of its entry. Gone once it is planned. */
export function MoveOffer({ dossier, catalogue, onMove }: MoveOfferProps) {
  const [params, setParams] = useSearchParams();
  const move = moveTo(dossier, catalogue, params.get('unit'), params.get('type'));
  if (!move) return null;
  return (
    <section className="tw-sheet tw-stack" aria-label="From the catalogue">
      <p>
        {move.unit.name} is recorded with another version of its catalogue entry. Record it with {move.reason}? No work
        is done on the aircraft.
      </p>
      <Button
        onClick={() => {
          onMove(move);
          // It is on the plan now, which is kept; the address has done its work.
          setParams({}, { replace: true });
        }}
      >
        Put it on the plan
      </Button>
    </section>
  );
}
