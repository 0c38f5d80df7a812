import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import type { Worked } from '../../libs/rules/src/assess/worked.js';
import { workedFile } from '../../libs/rules/testing/worked.js';

/** What the cases of a rule's own test show, as its tester wrote it down. */
export function readWorked(ruleId: string): Worked {
  return JSON.parse(readFileSync(workedFile(ruleId), 'utf8')) as Worked;
}

/** Ids of the rules that have their cases written down. */
export function workedIds(): readonly string[] {
  return readdirSync(dirname(workedFile('any'))).map((name) => basename(name, '.json'));
}
