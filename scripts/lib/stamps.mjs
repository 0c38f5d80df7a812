import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { cacheDirectory, inRoot, root } from './paths.mjs';

/** All files at or below the given paths (relative to the checkout), sorted; a path that is missing gives none. */
export function filesBelow(paths, keep = () => true) {
  const found = [];
  const walk = (path) => {
    if (!statSync(path).isDirectory()) found.push(relative(root, path));
    else for (const name of readdirSync(path)) if (name !== 'node_modules' && name !== 'dist') walk(join(path, name));
  };
  for (const path of paths) if (existsSync(inRoot(path))) walk(inRoot(path));
  return found.filter(keep).sort();
}

/** SHA-256 over names and contents of files, and over any further words that the result depends on. */
export function hashOf(files, ...words) {
  const hash = createHash('sha256');
  for (const word of [process.versions.node.split('.')[0], ...words]) hash.update(`${word}\0`);
  for (const file of files)
    hash
      .update(`${file}\0`)
      .update(readFileSync(inRoot(file)))
      .update('\0');
  return hash.digest('hex');
}

/** Version of an installed package, so that a new compiler builds anew. */
export const versionOf = (name) =>
  JSON.parse(readFileSync(inRoot('node_modules', name, 'package.json'), 'utf8')).version;

const stampFile = (name) => join(cacheDirectory, `${name}.json`);

/** What was stamped under this name, or undefined. A stamp that cannot be read counts as absent: the step runs. */
export function readStamp(name) {
  try {
    return JSON.parse(readFileSync(stampFile(name), 'utf8'));
  } catch {
    return undefined;
  }
}

export function writeStamp(name, content) {
  mkdirSync(cacheDirectory, { recursive: true });
  writeFileSync(stampFile(name), JSON.stringify(content));
}

export const removeStamp = (name) => rmSync(stampFile(name), { force: true });
