const argument =
  'Take it as an argument: the library gives the same answer for the same input, in Node and in the browser.';

const civil = 'Use src/time: days and instants as text, zones as arguments.';

const globals = [
  ['process', argument],
  ['fetch', `The library does no I/O. ${argument}`],
  ['XMLHttpRequest', `The library does no I/O. ${argument}`],
  ['Date', `It knows the machine's clock and zone. ${civil}`],
  ['Intl', `It knows the machine's zone and language. ${civil}`],
  ['Temporal', `It knows the machine's clock and zone. ${civil}`],
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

const properties = [
  {
    object: 'Math',
    property: 'random',
    message: 'The library leaves nothing to chance. Take the value as an argument.',
  },
];

const syntax = [
  {
    selector: 'MemberExpression[property.name=/^(toLocale(String|DateString|TimeString)|localeCompare)$/]',
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
