export const home = 'libs/rules/src/';
const published = 'tests/reference/';
/** What a folder is for, where that is more than what lies in it: the horizon is the assessment asked along time and hours. */
const alsoHeldTo = { [`${home}assess/`]: [`${home}horizon/`] };

/**
 * Whether a test is about a changed file: it lies beside it, or holds the library to published figures. Others reach it too: a test that
 * assesses a whole aircraft reaches nearly everything, slowly, and would make a change look tested that nobody thought of.
 */
export function isAbout(file, testId) {
  return testsOf(placeOf(file)).some((place) => testId.startsWith(place));
}

/** Folders whose tests are about what Stryker's `mutate` patterns name; none lies within another. */
export function placesOf(patterns) {
  const wanted = patterns.filter((each) => !each.startsWith('!')).flatMap((each) => testsOf(placeOf(each)));
  return [...new Set(wanted)].filter((each) => !wanted.some((one) => one !== each && each.startsWith(one)));
}

function testsOf(place) {
  return [place, ...(alsoHeldTo[place] ?? []), published];
}

/** A topic of the rules, or a folder beside them; what all rules share belongs to no one topic. */
export function placeOf(file) {
  const [folder, topic = ''] = file.slice(home.length).split('/');
  if (folder === '**') return home;
  const inTopic = folder === 'rules' && !topic.includes('*') && !topic.endsWith('.ts');
  return inTopic ? `${home}rules/${topic}/` : `${home}${folder}/`;
}
