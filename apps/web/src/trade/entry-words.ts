import { recordKindWords } from './words.js';
import { dateWords, hoursWords } from '../ui/words.js';

/** What an entry is about, in a few words, from the change as it was recorded. */
export function entryWords(body: unknown): string {
  const change = (body ?? {}) as Readonly<Record<string, unknown>>;
  const record = part(change['record']);
  if (typeof record['kind'] === 'string') {
    const done = part(record['done'])['date'];
    return `${recordKindWords(record['kind'])}${typeof done === 'string' ? `, done ${dateWords(done)}` : ''}`;
  }
  const named = [
    'unit',
    'defect',
    'hold',
    'placard',
    'directive',
    'supplement',
    'link',
    'load',
    'definition',
    'aircraft',
  ]
    .map((name) => part(change[name]))
    .find((each) => Object.keys(each).length > 0);
  const words = [
    named?.['name'],
    named?.['text'],
    named?.['reason'],
    named?.['number'],
    named?.['registration'],
    joined(named),
    change['unitId'],
    named?.['unitId'],
    change['reason'],
    change['what'],
  ];
  const found = words.find((each): each is string => typeof each === 'string' && each !== '');
  const dial =
    typeof change['dial'] === 'number' ? `${String(change['meter'] ?? '')} ${hoursWords(change['dial'])}` : '';
  return found ?? dial;
}

function joined(link: Readonly<Record<string, unknown>> | undefined): string | undefined {
  return link && typeof link['fromPort'] === 'string'
    ? `${String(link['fromUnit'])} ${link['fromPort']} to ${String(link['toUnit'])} ${String(link['toPort'])}`
    : undefined;
}

function part(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
