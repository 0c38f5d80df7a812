const argument =
  'Take it as an argument: the library gives the same answer for the same input, in Node and in the browser.';

const globals = [
  ['process', argument],
  ['fetch', `The library does no I/O. ${argument}`],
  ['XMLHttpRequest', `The library does no I/O. ${argument}`],
  ['performance', `The library reads no clock. ${argument}`],
  ['setTimeout', 'The library does not wait: work out the moment and return it.'],
  ['setInterval', 'The library does not wait: work out the moment and return it.'],
  ['setImmediate', 'The library does not wait: work out the moment and return it.'],
  ['queueMicrotask', 'The library does not wait: return the result.'],
  ['console', 'The library prints nothing: return what there is to say as data.'],
  ['Buffer', 'This exists in Node alone. Use plain numbers, strings or typed arrays.'],
  ['crypto', `This is not the same everywhere. ${argument}`],
  ['window', 'This exists in the browser alone.'],
  ['document', 'This exists in the browser alone.'],
  ['globalThis', `Nothing is read from the surroundings. ${argument}`],
].map(([name, message]) => ({ name, message }));

const moment = 'The library reads no clock. Take the moment as an argument (an Instant or a CivilDate).';
const properties = [
  { object: 'Date', property: 'now', message: moment },
  {
    object: 'Math',
    property: 'random',
    message: 'The library leaves nothing to chance. Take the value as an argument.',
  },
];

const syntax = [
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: moment },
  { selector: 'CallExpression[callee.name="Date"]', message: moment },
  { selector: 'MemberExpression[object.name="Temporal"][property.name="Now"]', message: moment },
  {
    selector: 'MemberExpression[property.name=/^toLocale(String|DateString|TimeString)$/]',
    message: 'The outcome depends on the machine. Return data, and let the edge make words of it.',
  },
  { selector: 'MetaProperty', message: argument },
];

/** What keeps the rule library a function of its arguments. */
export const clockFree = {
  rules: {
    'no-restricted-globals': ['error', ...globals],
    'no-restricted-properties': ['error', ...properties],
    'no-restricted-syntax': ['error', ...syntax],
  },
};
