export const home = 'libs/rules/src/';
const published = 'tests/reference/';

/**
 * Whether a test is about a changed file: it lies beside it, or holds the library to published figures. Others reach it too: a test that
 * assesses a whole aircraft reaches nearly everything, slowly, and would make a change look tested that nobody thought of.
 */
export function isAbout(file, testId) {
  return testId.startsWith(placeOf(file)) || testId.startsWith(published);
}

/** Folders whose tests are about what Stryker's `mutate` patterns name; none lies within another. */
export function placesOf(patterns) {
  const places = new Set(patterns.filter((each) => !each.startsWith('!')).map(placeOf));
  return [...[...places].filter((each) => ![...places].some((one) => one !== each && each.startsWith(one))), published];
}

/** A topic of the rules, or a folder beside them; what all rules share belongs to no one topic. */
export function placeOf(file) {
  const [folder, topic = ''] = file.slice(home.length).split('/');
  if (folder === '**') return home;
  return folder === 'rules' && !topic.includes('*') && !topic.endsWith('.ts')
    ? `${home}rules/${topic}/`
    : `${home}${folder}/`;
}
