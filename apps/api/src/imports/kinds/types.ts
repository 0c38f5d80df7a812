import type { EquipmentType } from '@tallywing/rules';
import { entryTexts, readEntry } from '@tallywing/rules';
import { fill } from '../../aircraft/refusals.js';
import { equipmentTypeId } from '../../aircraft/stamp.js';
import type { RowOf } from '../file-kind.js';
import { optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { CellProblem } from '../problems.js';
import { vocabulary } from '../vocabulary.js';

type Functions = EquipmentType['functions'][number];

/** The catalogue's own file: its rows belong to no aircraft and are taken before all others. */
const columns = {
  family: required(form.id, 'Short name that stays the same over the versions of a product.'),
  maker: required(form.text, 'Maker.'),
  type_name: required(form.text, 'Name of the product.'),
  part_number: required(form.text, 'Part number.'),
  manual: required(form.text, 'Installation manual.'),
  manual_revision: required(form.text, 'Its revision.'),
  type_functions: required(
    form.words(vocabulary<Functions>('unit.install', 'unit.functions')),
    'What a unit of this type does.',
  ),
  authorisations: optional(form.text, 'TSO authorisations with class, such as C146d:Gamma-3 | C112e.'),
  mass_lb: optional(form.decimalNumber, 'Mass, pounds.'),
  supply_least_v: optional(form.decimalNumber, 'Least voltage that its manual lets it be fed with.'),
  supply_most_v: optional(form.decimalNumber, 'Most voltage that its manual lets it be fed with.'),
  draw_14v_a: optional(
    form.decimalNumber,
    'Current at 14 V, amperes; 0 where it draws nothing, empty where the manual does not state it.',
  ),
  draw_28v_a: optional(form.decimalNumber, 'Current at 28 V, amperes; the same.'),
  width_in: optional(form.decimalNumber, 'Width of what passes the opening, inches.'),
  height_in: optional(form.decimalNumber, 'Height of it.'),
  depth_in: optional(form.decimalNumber, 'Depth behind the panel with connectors.'),
  details: optional(
    form.json,
    'Ports, pairs, limitations, databases, cooling and view as JSON, in the form of the catalogue.',
  ),
} as const;
export type TypeRow = RowOf<typeof columns>;

export const typesFile = {
  kind: 'types',
  says: 'One row for each equipment type of the catalogue. A changed row is a new version; aircraft keep the version they have.',
  keySays: 'family',
  columns,
} as const;

/** @throws CellProblem naming what the catalogue's schema does not take */
export function typeOf(row: TypeRow): EquipmentType {
  const details = row.details ?? {};
  if (typeof details !== 'object' || Array.isArray(details))
    throw new CellProblem('Details are an object.', 'Write {"ports":[...]} and the like.', 'details');
  const body = {
    family: row.family,
    maker: row.maker,
    name: row.type_name,
    partNumber: row.part_number,
    document: row.manual,
    revision: row.manual_revision,
    functions: row.type_functions,
    authorisations: (row.authorisations ?? '')
      .split('|')
      .map((each) => each.trim())
      .filter((each) => each !== '')
      .map((each) => ({ tso: each.split(':')[0] ?? '', class: each.split(':')[1] ?? null })),
    bezel:
      row.width_in === null || row.height_in === null
        ? null
        : { widthIn: row.width_in, heightIn: row.height_in, depthIn: row.depth_in },
    massLb: row.mass_lb,
    drawA: row.draw_14v_a === null && row.draw_28v_a === null ? null : { at14V: row.draw_14v_a, at28V: row.draw_28v_a },
    supplyV:
      row.supply_least_v === null || row.supply_most_v === null
        ? null
        : { least: row.supply_least_v, most: row.supply_most_v },
    cooling: null,
    ports: [],
    databases: [],
    view: null,
    pairs: [],
    limitations: [],
    ...details,
  };
  const read = readEntry(body);
  if (read.ok) return { id: equipmentTypeId(read.entry), ...read.entry };
  const [first] = read.problems;
  if (first === undefined) throw new Error('An entry was refused without a reason.');
  const { says, wayOut } = entryTexts[first.code];
  const column = first.field.startsWith('authorisations')
    ? 'authorisations'
    : first.field in columns
      ? first.field
      : 'details';
  const where = first.code === 'malformed' ? '' : `${first.field}: `;
  throw new CellProblem(`${where}${fill(says, first.data)}`, wayOut, column);
}
