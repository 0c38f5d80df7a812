import type { Catalogue, EquipmentType } from '../src/catalogue/type.js';
import type { Change, ChangeOf } from '../src/changes/changes.js';
import { admit, apply, blankDossier } from '../src/changes/changes.js';
import type { Aircraft } from '../src/dossier/aircraft.js';
import type { Dossier } from '../src/dossier/dossier.js';

export function catalogueOf(...types: readonly EquipmentType[]): Catalogue {
  return { version: 'test', types: Object.fromEntries(types.map((type) => [type.id, type])) };
}

export const plainAircraft: Aircraft = {
  ...blankDossier('x').configuration.aircraft,
  registration: 'TW-01Q',
  make: 'Testbed',
  model: 'One',
  kind: 'airplane',
  certificate: 'standard',
  manufactured: '1979-05-04',
  base: { id: 'field', name: 'Field', zone: 'America/Chicago' },
};

export const added: Change = { kind: 'aircraft.add', version: 1, aircraft: plainAircraft };

/** Applies changes that must all be admitted. */
export function after(
  changes: readonly Change[],
  catalogue: Catalogue = catalogueOf(),
  from: Dossier = blankDossier('test-aircraft'),
): Dossier {
  return changes.reduce((dossier, change, index) => {
    const refusals = admit(dossier, catalogue, change, '2026-06-01T12:00Z');
    if (refusals.length > 0)
      throw new Error(`change ${index} (${change.kind}) was refused: ${JSON.stringify(refusals)}`);
    return apply(dossier, change);
  }, from);
}

/** Somebody says so of the VOR check of one receiver. */
export const give = (id: string, part: Partial<ChangeOf<'say-so.give'>['sayso']> = {}): ChangeOf<'say-so.give'> => ({
  kind: 'say-so.give',
  version: 1,
  sayso: {
    id,
    rule: 'vor-check',
    subject: 'nav1',
    by: 'R. Tamsin',
    reason: 'Read the text',
    from: '2026-03-01T00:00Z',
    until: '2026-04-01T00:00Z',
    ...part,
  },
});
