import { existsSync, readdirSync } from 'node:fs';
import { basename } from 'node:path';
import { inRoot } from '../lib/paths.mjs';
import { home } from './about.mjs';

/**
 * Why a change that no test notices makes no difference, by kinds that come back in many places. `code` is what was changed, `line` the
 * line that it stands in. What fits none is listed on the page as wanting a test or a reason.
 */
const kinds = [
  {
    reason: 'the path for the case that nobody recorded a fact, of a fact that is computed and so never missing',
    fits: ({ code, line }) => code === "''" && /\bfact\(|, '', /.test(line),
  },
  {
    reason: 'guards a unit that a link, pack, entry or path names and that is not aboard: no such change is admitted',
    fits: ({ mutatorName, code, line }) =>
      (mutatorName === 'OptionalChaining' && /units\.get\(|\b(from|to|told|unit|sender|gone)\?\./.test(code)) ||
      (mutatorName === 'LogicalOperator' && /units\.get\(.*\?\? \w+$/.test(code)) ||
      (code === '[]' && /units\.get\(|!from \|\| !to/.test(line)) ||
      (/^!from( \|\| !to)?$/.test(code) && mutatorName !== 'BooleanLiteral'),
  },
  {
    reason: 'the order of two that are never equal: ids of one list differ',
    fits: ({ mutatorName, code }) =>
      mutatorName === 'EqualityOperator' &&
      /^(a\.(id|item|list)|loadKey\(a\)) [<>] (b\.(id|item|list)|loadKey\(b\))$/.test(code),
  },
  {
    reason: 'which of two equal values is taken: the line chooses the greater or the lesser of just these two',
    fits: ({ mutatorName, code, replacement, line }) => {
      const [, one, sign, other] = /^(\S+) ([<>])=? (\S+)$/.exec(code) ?? [];
      return (
        mutatorName === 'EqualityOperator' &&
        [`${one} ${sign} ${other}`, `${one} ${sign}= ${other}`].includes(replacement) &&
        [`${code} ? ${one} : ${other}`, `${code} ? ${other} : ${one}`].some((choice) => line.includes(choice))
      );
    },
  },
  {
    reason: 'the very edge of a bound against numbers that no aircraft has',
    fits: ({ mutatorName, code }) => mutatorName === 'EqualityOperator' && /\bmost(Lb|In|Ft)$| < 1$| >= 1$/.test(code),
  },
  {
    reason: 'two that differ, as the same line asks before it',
    fits: ({ mutatorName, code, replacement, line }) => {
      const [, one, sign, other] = /^(\S+) ([<>]) (\S+)$/.exec(code) ?? [];
      return (
        mutatorName === 'EqualityOperator' &&
        replacement === `${one} ${sign}= ${other}` &&
        line.includes(`if (${one} !== ${other}) return ${code}`)
      );
    },
  },
  {
    reason: 'null, which is greater than no figure above zero: the line asks for a greater one next',
    fits: ({ mutatorName, code, replacement, line }) =>
      mutatorName === 'ConditionalExpression' &&
      replacement === 'true' &&
      / !== null$/.test(code) &&
      ['1', 'smallUpToLb.value'].some((figure) => line.includes(`${code} && ${code.split(' ')[0]} > ${figure}`)),
  },
];

/**
 * Why one single change makes no difference: files of `reasons/`, each a list of `{ file, code, replacement?, line?, reason }`. `file` is
 * below `libs/rules/src`, `code` what was changed, `replacement` what it was changed to (any, if left out), `line` some text of its line.
 */
const folder = 'scripts/mutate/reasons';
const names = readdirSync(inRoot(folder)).map((file) => basename(file, '.mjs'));
const loaded = await Promise.all(names.map((name) => import(`./reasons/${name}.mjs`)));
export const singles = loaded.flatMap((each) => each.default);

export function reasonFor(mutant, list = singles) {
  const found = kinds.find(({ fits }) => fits(mutant)) ?? list.find((single) => isOf(single, mutant));
  return found?.reason ?? null;
}

/** Single reasons for nothing: the code is gone or was changed, or a test notices by now. `survivors` are all those of `files`. */
export function staleReasons(survivors, files, list = singles) {
  const isTried = ({ file }) => files.includes(home + file) || !existsSync(inRoot(home + file));
  return list.filter((single) => isTried(single) && !survivors.some((mutant) => isOf(single, mutant)));
}

function isOf({ file, code, replacement, line }, mutant) {
  return (
    home + file === mutant.file &&
    oneLine(code) === oneLine(mutant.code) &&
    (replacement === undefined || oneLine(replacement) === oneLine(mutant.replacement ?? '')) &&
    (line === undefined || mutant.line.includes(line))
  );
}

function oneLine(text) {
  return text.replaceAll(/\s+/g, ' ').trim();
}
