import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { rules } from '../../libs/rules/src/rules/registry.js';
import type { Rule } from '../../libs/rules/src/rules/rule.js';
import { topics } from '../../libs/rules/src/rules/rule.js';
import { sourceStatuses } from '../../libs/rules/src/facts/source.js';
import { capabilities } from '../../libs/rules/src/verdict/capability.js';

/** What every rule file keeps to. Each check says what to do when it fails. */
const home = fileURLToPath(new URL('../../libs/rules/src/rules/', import.meta.url));
const registry = join(home, 'registry.ts');
const folders = readdirSync(home, { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map((each) => each.name);
const files = folders.flatMap((topic) =>
  readdirSync(join(home, topic))
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .map((name) => ({ topic, path: join(home, topic, name), id: basename(name, '.ts') })),
);
const here = (path: string) => relative(fileURLToPath(new URL('../../', import.meta.url)), path);
const camelCase = (id: string) => id.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());

describe('folders', () => {
  it('are topics', () => {
    const strangers = folders.filter((each) => !topics.some((topic) => topic === each));
    expect(strangers, `add to the list of topics in ${here(join(home, 'rule.ts'))}, or move the rules`).toEqual([]);
  });

  it('hold rules', () => {
    expect(files.length, 'the search for rule files found none: mend this test').toBeGreaterThan(0);
  });
});

describe.each(files.map((each) => [here(each.path), each] as const))('%s', (shown, { topic, path, id }) => {
  const text = readFileSync(path, 'utf8');
  const name = camelCase(id);

  it('is named in small letters and dashes', () => {
    expect(id, `rename ${shown}: the file name is the id and the anchor of the rule's page`).toMatch(
      /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/,
    );
  });

  it('has its test beside it', () => {
    const beside = readdirSync(join(home, topic));
    expect(beside, `write ${topic}/${id}.test.ts with testRule(${name}, [...])`).toContain(`${id}.test.ts`);
    const test = readFileSync(path.replace(/\.ts$/, '.test.ts'), 'utf8');
    expect(
      new RegExp(`testRule\\(\\s*${name}\\b`).test(test),
      `run ${name} through testRule in ${topic}/${id}.test.ts`,
    ).toBe(true);
  });

  it('exports its rule under its name, with its own id and topic, and the registry lists it', async () => {
    const exported = (await import(/* @vite-ignore */ pathToFileURL(path).href)) as Record<string, Rule | undefined>;
    const rule = exported[name];
    if (!rule) throw new Error(`export the rule of ${shown} as ${name}`);
    expect(rule.meta.id, `set meta.id of ${shown} to the file's name`).toBe(id);
    expect(rule.meta.topic, `set meta.topic of ${shown} to its folder, or move the file`).toBe(topic);
    const listed = rules.some((each) => each.meta.id === id);
    expect(listed, `import ${name} in ${here(registry)} and add it to the list`).toBe(true);
  });

  it('imports no other rule', () => {
    const others = [...text.matchAll(/from '(\.[^']*)'/g)]
      .map(([, target]) => target ?? '')
      .filter((target) => target.startsWith('./') || topics.some((each) => target.startsWith(`../${each}/`)));
    expect(
      others,
      `move what both rules of ${shown} need to a file in ${here(home)}, or use ref(capability) to lean on a verdict`,
    ).toEqual([]);
  });
});

describe('the registry', () => {
  it('lists every rule once', () => {
    const ids = rules.map((each) => each.meta.id);
    const twice = ids.filter((each, index) => ids.indexOf(each) !== index);
    expect(twice, `take the second entry out of ${here(registry)}`).toEqual([]);
    const homeless = ids.filter((each) => !files.some((file) => file.id === each));
    expect(homeless, 'put each rule in a file of its own in the folder of its topic').toEqual([]);
  });

  it('has a rule that establishes each capability', () => {
    const established = new Set(rules.flatMap((each) => each.meta.establishes));
    const missing = capabilities.filter((each) => !established.has(each));
    expect(
      missing,
      'nothing positively judges these: name them in meta.establishes of the rule that does, or every aircraft stays "not judged"',
    ).toEqual([]);
  });
});

describe.each(rules.map((each) => [each.meta.id, each.meta] as const))('the words of %s', (id, meta) => {
  it('say in one sentence each what it asks and whom it binds', () => {
    for (const field of ['asks', 'binds'] as const) {
      expect(meta[field], `start meta.${field} of ${id} with a capital or a figure`).toMatch(/^[A-Z0-9"]/);
      expect(meta[field], `end meta.${field} of ${id} with a full stop`).toMatch(/\.$/);
    }
  });

  it('cite a source with document, paragraph and a known status', () => {
    expect(meta.sources.length, `give ${id} a source; without one it is practice(...)`).toBeGreaterThan(0);
    for (const source of meta.sources) {
      expect(source.document, `name the document of each source of ${id}`).not.toBe('');
      expect(source.paragraph, `name the paragraph of each source of ${id}`).not.toBe('');
      expect(sourceStatuses, `use a known status in the sources of ${id}`).toContain(source.status);
      const dated =
        ['maker', 'house-policy', 'common-practice', 'from-memory'].includes(source.status) || source.edition !== '';
      expect(dated, `state the edition of ${source.document} ${source.paragraph} in ${id}`).toBe(true);
    }
  });

  it('are plain sentences with placeholders in braces', () => {
    expect(Object.keys(meta.messages).length, `give ${id} at least one message`).toBeGreaterThan(0);
    for (const [message, words] of Object.entries(meta.messages)) {
      const where = `message ${message} of ${id}`;
      expect(message, `rename ${where} in small letters and dashes`).toMatch(/^[a-z][a-z0-9-]*$/);
      expect(words.replaceAll(/\{[a-z][A-Za-z]*\}/g, ''), `write placeholders of ${where} as {name}`).not.toMatch(
        /[{}]/,
      );
      expect(words, `end ${where} with a full stop or a placeholder that does`).toMatch(/[.}]$/);
      expect(/\bairworthy\b/i.test(words), `${where} must not use "airworthy": the program approves nothing`).toBe(
        false,
      );
    }
  });
});
