import type { KnownHouse } from './plan.js';
import { CellProblem } from './problems.js';

type Remark = (text: string) => void;

/** Operators and bases by name; what is not known yet is added, and said so. */
export class Lists {
  readonly newOperators: { id: string; name: string }[] = [];
  private readonly newBases: { id: string; name: string; zone: string }[] = [];

  constructor(private readonly known: Pick<KnownHouse, 'operators' | 'bases'>) {}

  operatorNamed(name: string, remark: Remark): string {
    const all = [...this.known.operators, ...this.newOperators];
    const found = all.find((each) => alike(each.name, name) || alike(each.id, name));
    if (found) return found.id;
    const id = freeId(name, new Set(all.map((each) => each.id)));
    this.newOperators.push({ id, name });
    remark(`${name} is a new operator.`);
    return id;
  }

  baseNamed(name: string, zone: string | null, remark: Remark): { id: string; name: string; zone: string } {
    const all = [...this.known.bases, ...this.newBases];
    const found = all.find((each) => alike(each.name, name) || alike(each.id, name));
    if (found && zone !== null && zone !== found.zone)
      throw new CellProblem(
        `The base ${found.name} lies in ${found.zone}.`,
        'Correct the zone, or give the base a name of its own.',
        'base_zone',
      );
    if (found) return { id: found.id, name: found.name, zone: found.zone };
    if (zone === null)
      throw new CellProblem(
        `There is no base ${name}.`,
        'Correct the name, or give the zone of the new base under base_zone.',
        'base',
      );
    const base = { id: freeId(name, new Set(all.map((each) => each.id))), name, zone };
    this.newBases.push(base);
    remark(`${name} is a new base in ${zone}.`);
    return base;
  }
}

function alike(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

function freeId(name: string, taken: ReadonlySet<string>): string {
  const wanted =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'unnamed';
  for (let n = 1; ; n += 1) {
    const candidate = n === 1 ? wanted : `${wanted}-${n}`;
    if (!taken.has(candidate)) return candidate;
  }
}
