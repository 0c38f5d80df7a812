/**
 * Refuses a Node that is too old, before anything else runs.
 * Import this file first: it is kept to syntax and built-ins that an old Node also understands.
 */
const needed = [20, 19];
const have = process.versions.node.split('.').map(Number);

if (have[0] < needed[0] || (have[0] === needed[0] && have[1] < needed[1])) {
  console.error(
    'Tallywing needs Node ' +
      needed.join('.') +
      ' or newer, and this is Node ' +
      process.versions.node +
      '.\n' +
      'What to do: install a current Node (for instance with your package manager or a version manager), ' +
      'then run the same command again.',
  );
  process.exit(1);
}
