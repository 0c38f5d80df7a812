/**
 * Why a change that no test notices makes no difference. Kinds that come back everywhere first, then single places. What fits none is
 * listed as wanting a test.
 */
const kinds = [
  {
    reason: 'the path of a fact for the case that nobody recorded it, where it is computed and so never missing',
    fits: ({ code, line }) => code === "''" && /\bfact\(|, ''/.test(line),
  },
  {
    reason: 'guards a unit that a link, pack or entry names and that is not aboard: no such record is admitted',
    fits: ({ mutatorName, code, line }) =>
      (mutatorName === 'OptionalChaining' && /units\.get\(/.test(code)) ||
      (mutatorName === 'LogicalOperator' && /units\.get\(.*\?\? \w+$/.test(code)) ||
      (mutatorName === 'ArrayDeclaration' && code === '[]' && /units\.get\(/.test(line)),
  },
];

const places = [];

export function reasonFor(mutant) {
  return [...kinds, ...places].find(({ fits }) => fits(mutant))?.reason ?? null;
}
