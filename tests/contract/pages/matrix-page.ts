import { goodDay } from '../../../libs/rules/testing/trainer.js';
import { aircraft, flights } from '../matrix.js';
import type { Cell } from './worked.js';
import { escaped, inWords, workedCells } from './worked.js';

const words = { yes: 'yes', no: 'no', 'cannot-tell': 'cannot tell' } as const;

/** One table of answers, then for each aircraft why. */
export function matrixPage(): string {
  const cells = workedCells();
  const names = Object.keys(aircraft);
  const asked = Object.keys(flights);
  const of = (name: string) => cells.filter((each) => each.aircraft === name);
  return `# What each aircraft may be used for

${names.length} invented aircraft, each a well-kept trainer but for what its name says, asked for ${asked.length} flights at ${goodDay}.
The page is made from the rules; \`tests/contract/matrix.test.ts\` holds every answer and its reason against what is expected.
It shows how the rules judge, and approves nothing.

| | ${asked.join(' | ')} |
| --- | ${asked.map(() => '---').join(' | ')} |
${names.map((name) => `| **${name}** | ${of(name).map(answer).join(' | ')} |`).join('\n')}

## Why

${names.map((name) => `### ${name}\n\n${reasons(of(name))}`).join('\n\n')}
`;
}

function answer({ verdict }: Cell): string {
  return verdict.standing === 'not-fitted' ? 'not fitted' : words[verdict.ready];
}

/** Flights that are stopped by the same results stand in one line. */
function reasons(cells: readonly Cell[]): string {
  const stopped = cells.filter(({ verdict }) => verdict.ready !== 'yes');
  if (stopped.length === 0) return 'Every flight is a yes.';
  const groups = new Map<string, string[]>();
  for (const cell of stopped) {
    const because = cell.verdict.because
      .map((key) => cell.results.find((each) => each.key === key))
      .filter((each) => each !== undefined);
    const text =
      because.length === 0
        ? 'Nothing that could do it is fitted.'
        : because
            .slice(0, 3)
            .map((each) => inWords(each, cell))
            .join(' ');
    const more = because.length > 3 ? ` (and ${because.length - 3} more)` : '';
    const line = `${answer(cell)}: ${escaped(text)}${more}`;
    groups.set(line, [...(groups.get(line) ?? []), cell.flight]);
  }
  return [...groups].map(([line, flown]) => `- ${flown.join('; ')}: ${line}`).join('\n');
}
