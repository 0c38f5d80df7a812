import { codeWords, dateWords, lowerFirst } from '@tallywing/rules';
import { labelOf } from '../../form/labels.js';
import { sayer, recordWords } from '../../trade/entry-words.js';
import { countWords, hoursWords } from '../../ui/words.js';

export interface Difference {
  readonly place: string;
  readonly was: unknown;
  readonly is: unknown;
}

/** One thing on the record that is not what it was. */
export interface DifferenceLine {
  /** `Unit QN 52 navigator`, `Empty weight`. */
  readonly what: string;
  readonly how: 'added' | 'removed' | 'changed';
  readonly fields: readonly { readonly label: string; readonly was: string; readonly is: string }[];
}

type Values = Readonly<Record<string, unknown>>;

const places: Readonly<Record<string, string>> = {
  aircraft: 'Facts of the aircraft',
  authority: 'Kinds of operation allowed',
  equipment: 'Required equipment',
  openings: 'Opening in the panel',
  units: 'Unit',
  links: 'Joint',
  takenOut: 'Unit taken out',
  antennas: 'Antenna',
  placards: 'Placard',
  supplements: 'Flight manual supplement',
  staticSystems: 'Static system',
  electrical: 'Electrical system',
  mass: 'Empty weight',
  identities: 'Transmitted identity',
  papers: 'Paper',
  packs: 'Document pack',
  records: 'Entry',
  obligations: 'Owed',
  defects: 'Open defect',
  directives: 'Directive',
  loads: 'Database',
  holds: 'Hold',
  sayings: 'Answer for a doubted source',
  completeness: 'List stated complete',
  recurring: 'Recurring item',
  lifeLimits: 'Life limit',
  decisions: 'Decision',
  definitions: 'Meter',
  timeInService: 'Meter that stands for time in service',
  readings: 'Reading',
  utilisation: 'Expected use',
};

/** Places of a dossier that have words; a test holds them against its schema. */
export const wordedPlaces: readonly string[] = Object.keys(places);

/** Whole hundredths of an hour. */
const hours = new Set(['value', 'dueAt', 'perMonth', 'offset', 'at']);
/** They tell nobody anything. */
const unsaid = new Set(['id', 'recordId', 'becauseOf']);

/**
 * What changed on the record, thing by thing, in words. What was recorded as nothing before and still is stays out.
 * @param when an instant in words
 */
export function differenceLines(
  differences: readonly Difference[],
  names: unknown,
  when: (instant: string) => string,
): DifferenceLine[] {
  const say = sayer(names, when);
  return differences.map(({ place, was, is }) => {
    const what = [places[place] ?? codeWords(place), nameOf(place, (is ?? was) as Values, say)]
      .filter(Boolean)
      .join(' ');
    const how = was === null ? 'added' : is === null ? 'removed' : 'changed';
    return { what, how, fields: how === 'changed' ? fieldsOf(was, is, place, say) : [] };
  });
}

function nameOf(place: string, item: Values | string | null, say: ReturnType<typeof sayer>): string {
  if (item === null || typeof item !== 'object') return typeof item === 'string' ? say.name(item) : '';
  if (place === 'records') return recordWords(item as never, say);
  if (place === 'obligations')
    return `${lowerFirst(codeWords(String(item['what'])))} of ${say.name(String(item['subject']))}`;
  if (place === 'loads') return `${codeWords(String(item['database']))} in ${say.name(String(item['unitId']))}`;
  if (place === 'equipment') return lowerFirst(codeWords(String(item['item'])));
  if (place === 'completeness') return lowerFirst(codeWords(String(item['list'])));
  if (place === 'packs') return `of ${say.name(String(item['unitId']))}`;
  if (place === 'decisions') return `on ${say.name(String(item['subject']))}`;
  if (place === 'papers') return lowerFirst(codeWords(String(item['kind'])));
  if (place === 'aircraft') return '';
  return typeof item['id'] === 'string' ? say.name(item['id']) : '';
}

/** Fields that differ, by their labels; lists of things are said to have changed, with how many they are. */
function fieldsOf(was: unknown, is: unknown, path: string, say: ReturnType<typeof sayer>): DifferenceLine['fields'] {
  if (JSON.stringify(was ?? null) === JSON.stringify(is ?? null)) return [];
  if (isValues(was) && isValues(is)) {
    return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((name) =>
      unsaid.has(name) ? [] : fieldsOf(was[name], is[name], `${path}.${name}`, say),
    );
  }
  if (path.endsWith('.closedBy'))
    return [{ label: 'Answered by an entry', was: was === null ? 'no' : 'yes', is: is === null ? 'no' : 'yes' }];
  // Its id says nothing to people; the unit itself is named above.
  if (path.endsWith('.typeId'))
    return [
      {
        label: labelOf(path),
        was: is === null ? 'of the catalogue' : 'another, or another version',
        is: is === null ? 'not catalogued' : 'as recorded with this entry',
      },
    ];
  return [{ label: labelOf(path), was: valueWords(was, path, say), is: valueWords(is, path, say) }];
}

function valueWords(value: unknown, path: string, say: ReturnType<typeof sayer>): string {
  const field = path.slice(path.lastIndexOf('.') + 1);
  if (value === null || value === undefined) return 'not recorded';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number')
    return field === 'perFlightHour' ? String(value / 1000) : hours.has(field) ? hoursWords(value) : String(value);
  if (typeof value === 'string') return textWords(value, field, say);
  if (Array.isArray(value))
    return value.every((each) => typeof each === 'string')
      ? value.length === 0
        ? 'none'
        : value.map((each) => textWords(each, field, say)).join(', ')
      : countWords(value.length, 'item');
  return Object.entries(value)
    .flatMap(([name, inner]) =>
      inner === null || unsaid.has(name) || name === 'typeId' ? [] : [valueWords(inner, `${path}.${name}`, say)],
    )
    .join(', ');
}

/** Fields that hold ids of other things of the aircraft. */
const idField = /Id$|^(subject|subjects|units|fromUnit|toUnit|positionUnit|meter|links|timeInService)$/;

function textWords(text: string, field: string, say: ReturnType<typeof sayer>): string {
  if (idField.test(field)) return say.name(text);
  if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}Z$/.test(text)) return say.when(text);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return dateWords(text);
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text) ? lowerFirst(codeWords(text)) : text;
}

function isValues(value: unknown): value is Values {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
