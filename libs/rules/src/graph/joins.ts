import type { Catalogue, Port } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';

/** Two ports that could be joined. */
export interface Join {
  readonly fromUnit: string;
  readonly fromPort: string;
  readonly toUnit: string;
  readonly toPort: string;
}

interface UnitPort {
  readonly unitId: string;
  readonly port: Port;
}

/**
 * Ports of one unit that nothing is joined to yet, each with a free port elsewhere that carries the same signal the
 * other way by the same standard. A proposal: whether a joint is approved is the rules' business.
 */
export function openJoins(unitId: string, dossier: Dossier, catalogue: Catalogue): Join[] {
  const { units, links } = dossier.configuration;
  const portsOf = (id: string): UnitPort[] => {
    const typeId = units.find((unit) => unit.id === id)?.typeId ?? null;
    return (typeId === null ? [] : (catalogue.types[typeId]?.ports ?? [])).map((port) => ({ unitId: id, port }));
  };
  const taken = new Set(
    links.flatMap((link) => [`${link.fromUnit} ${link.fromPort}`, `${link.toUnit} ${link.toPort}`]),
  );
  const free = ({ unitId: id, port }: UnitPort) => !taken.has(`${id} ${port.name}`);
  const others = units.filter((unit) => unit.id !== unitId).flatMap((unit) => portsOf(unit.id));
  const joins: Join[] = [];
  for (const mine of portsOf(unitId).filter(free)) {
    // An output may feed several inputs; an input takes one.
    const partner = others.find(
      (other) => fits(mine.port, other.port) && (other.port.direction === 'out' || free(other)),
    );
    if (!partner) continue;
    const [from, to] = mine.port.direction === 'in' ? [partner, mine] : [mine, partner];
    joins.push({ fromUnit: from.unitId, fromPort: from.port.name, toUnit: to.unitId, toPort: to.port.name });
    taken.add(`${to.unitId} ${to.port.name}`);
  }
  return joins;
}

function fits(mine: Port, other: Port): boolean {
  const opposite = mine.direction === 'in' ? other.direction !== 'in' : other.direction !== 'out';
  return opposite && mine.signal === other.signal && mine.standard === other.standard && mine.speed === other.speed;
}
