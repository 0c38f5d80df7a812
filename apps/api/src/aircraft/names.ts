import type { Dossier } from '@tallywing/rules';

export type Names = Readonly<Record<string, string>>;

/** What units, static systems and joints are called, by id. */
export function installedNames({ units, staticSystems, links }: Dossier['configuration']): Names {
  const own = new Map([...staticSystems, ...units].map(({ id, name }) => [id, name]));
  const end = (unit: string, port: string) => `${own.get(unit) ?? 'a unit no longer fitted'} ${port}`;
  return Object.fromEntries([
    ...links.map((link) => [link.id, `${end(link.fromUnit, link.fromPort)} to ${end(link.toUnit, link.toPort)}`]),
    ...own,
  ]);
}

/** The same with the place of each unit, for lists in which nothing else tells two units of one name apart. */
export function placedNames(configuration: Dossier['configuration']): Names {
  const placed = configuration.units.flatMap(({ id, name, place }) =>
    place === null ? [] : [[id, `${name}, ${place.replaceAll('-', ' ')}`]],
  );
  return { ...installedNames(configuration), ...Object.fromEntries(placed) };
}
