import { whenWords } from '@tallywing/rules';
import { Link } from 'react-router';
import { effectWords, subjectWords } from '../../trade/words.js';
import { OutcomeMark } from '../../ui/reason-tree.js';
import { DataTable, type Column } from '../../ui/table.js';
import { outcomeOf } from './outcome.js';
import type { Bitten } from './rule-query.js';

/** Open findings of one rule: which aircraft, and in which words. */
export function BitesTable({ findings }: { findings: Bitten }) {
  return (
    <DataTable
      caption="Open findings of this rule"
      captionHidden
      columns={columns}
      rows={findings.edges.map((edge) => edge.node)}
      rowKey={(finding) => finding.id}
      empty="It has no open finding on any aircraft."
    />
  );
}

const columns: readonly Column<Bitten['edges'][number]['node']>[] = [
  {
    key: 'aircraft',
    head: 'Aircraft',
    rowHead: true,
    sort: (finding) => finding.aircraft.registration,
    cell: (finding) => (
      <Link className="tw-mono" to={`/aircraft/${finding.aircraft.id}#findings`}>
        {finding.aircraft.registration}
      </Link>
    ),
  },
  {
    key: 'judged',
    head: 'Judged',
    sort: (finding) => finding.outcome,
    cell: (finding) => <OutcomeMark outcome={outcomeOf(finding.outcome)} />,
  },
  { key: 'text', head: 'Finding', cell: (finding) => finding.text },
  { key: 'subject', head: 'Of', sort: subjectWords, cell: subjectWords },
  {
    key: 'effect',
    head: 'Effect',
    sort: (finding) => finding.effect,
    cell: (finding) => effectWords(finding.effect.toLowerCase().replace(/_/g, '-')),
  },
  {
    key: 'since',
    head: 'Open since',
    sort: (finding) => finding.opensAt,
    cell: (finding) => whenWords(finding.opensAt, finding.aircraft.base.zone),
  },
];
