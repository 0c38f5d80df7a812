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
    reason: 'the very edge of a bound against numbers that no aircraft has',
    fits: ({ mutatorName, code }) => mutatorName === 'EqualityOperator' && /\bmost(Lb|In)$| < 1$| >= 1$/.test(code),
  },
  {
    reason: 'the beginning of a TSO number, which the catalogue takes in no other form',
    fits: ({ mutatorName, code, replacement }) =>
      mutatorName === 'Regex' && code.startsWith('/^C') && replacement?.startsWith('/C'),
  },
];

export function reasonFor(mutant) {
  return kinds.find(({ fits }) => fits(mutant))?.reason ?? null;
}
