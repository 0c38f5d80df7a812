import { installedNames } from '@tallywing/rules';
import type { Dossier, Names } from '@tallywing/rules';

/** What units, static systems and joints are called, by id, with the place of each unit: for lists in which nothing else tells two units of one name apart. */
export function placedNames(configuration: Dossier['configuration']): Names {
  const placed = configuration.units.flatMap(({ id, name, place }) =>
    place === null ? [] : [[id, `${name}, ${place.replaceAll('-', ' ')}`]],
  );
  return { ...installedNames(configuration), ...Object.fromEntries(placed) };
}
