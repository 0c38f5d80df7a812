import type { Dossier } from '../dossier/dossier.js';

/** What the things of an aircraft are called, by id. */
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
