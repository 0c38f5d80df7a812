import { codeWords, lowerFirst } from '@tallywing/rules';
import type { Dossier, Names } from '@tallywing/rules';

type Unit = Dossier['configuration']['units'][number];
type Ends = Pick<Dossier['configuration']['links'][number], 'fromUnit' | 'fromPort' | 'toUnit' | 'toPort'>;

/** 'SR 12 nav/com, serial S-9, centre stack'. */
export function unitWords({ name, serial, place }: Pick<Unit, 'name' | 'serial' | 'place'>): string {
  return `${name}${serial ? `, serial ${serial}` : ''}${place ? `, ${lowerFirst(codeWords(place))}` : ''}`;
}

/** 'SR 12 LAT OUT to SI 3 LAT IN'; of two units of one name each with its serial number or its place. */
export function jointWords({ fromUnit, fromPort, toUnit, toPort }: Ends, units: readonly Unit[]): string {
  const end = (id: string) => {
    const unit = units.find((each) => each.id === id);
    if (!unit) return id;
    const alike = units.filter(({ name }) => name === unit.name).length > 1;
    const apart = unit.serial ? `serial ${unit.serial}` : unit.place && lowerFirst(codeWords(unit.place));
    return alike && apart ? `${unit.name} (${apart})` : unit.name;
  };
  return `${end(fromUnit)} ${fromPort} to ${end(toUnit)} ${toPort}`;
}

/** Units, static systems and joints of one aircraft. */
export function namesIn({ configuration: { units, staticSystems, links } }: Dossier): Names {
  return Object.fromEntries([
    ...staticSystems.map(({ id, name }) => [id, name]),
    ...links.map((link) => [link.id, jointWords(link, units)]),
    ...units.map((unit) => [unit.id, unitWords(unit)]),
  ]);
}
