import { OutcomeMark } from '../../ui/reason-tree.js';
import { DataTable, type Column } from '../../ui/table.js';
import { outcomeOf } from './outcome.js';
import type { RuleDetail } from './rule-query.js';

/** The cases of the rule's own test, in its order. */
export function CasesTable({ cases }: { cases: RuleDetail['cases'] }) {
  return (
    <DataTable
      caption="Worked cases"
      captionHidden
      columns={columns}
      rows={cases.map((each, at) => ({ ...each, at }))}
      rowKey={(each) => String(each.at)}
      empty="No case is written down."
    />
  );
}

const columns: readonly Column<RuleDetail['cases'][number] & { readonly at: number }>[] = [
  { key: 'case', head: 'Case', rowHead: true, cell: ({ name }) => capital(name) },
  {
    key: 'outcome',
    head: 'Judged',
    sort: ({ outcome }) => outcome,
    cell: ({ outcome }) => (outcome === null ? 'Says nothing' : <OutcomeMark outcome={outcomeOf(outcome)} />),
  },
  { key: 'text', head: 'Says', cell: ({ text }) => (text === null ? '' : text) },
];

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
