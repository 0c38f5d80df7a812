import { capabilityWords, codeWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { Link } from 'react-router';
import { problemOf } from '../../app/problem.js';
import { useParamsState } from '../../app/use-params-state.js';
import { graphql, type ResultOf } from '../../graphql.js';
import { topicOptions } from '../../trade/topics.js';
import { Field } from '../../ui/field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { Loading, Trouble } from '../../ui/states.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords } from '../../ui/words.js';
import { SourceLine } from './source-line.js';

const RuleBookQuery = graphql(`
  query RuleBook {
    ruleBook {
      id
      topic
      asks
      binds
      sources {
        document
        paragraph
        edition
        status
      }
      establishes
      open
    }
  }
`);

type Rule = ResultOf<typeof RuleBookQuery>['ruleBook'][number];

/** Every rule in force: what it asks, whom it binds, on which source, and how often it bites now. */
export function RulesScreen() {
  const [asked, ask] = useParamsState(['topic', 'text']);
  const { data, error, refetch } = useQuery(RuleBookQuery);
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the rules" />;
  const words = asked.text.trim().toLowerCase();
  const rules = data.ruleBook.filter(
    (rule) => (asked.topic === '' || rule.topic === asked.topic) && (words === '' || textOf(rule).includes(words)),
  );
  return (
    <div className="tw-stack">
      <h1>Rules</h1>
      <FilterBar label="Which rules">
        <Pick label="Topic" value={asked.topic} onPick={(topic) => ask({ topic })} options={topicOptions} />
        <Field label="Text or source">
          <input type="search" value={asked.text} onChange={(event) => ask({ text: event.target.value })} />
        </Field>
      </FilterBar>
      <p className="tw-soft">
        {countWords(rules.length, 'rule')}. A source that is not a text we have read is marked; a yes that rests on one
        says so.
      </p>
      <DataTable
        caption="Rules in force"
        captionHidden
        columns={columns}
        rows={rules}
        rowKey={(rule) => rule.id}
        sorted={{ key: 'topic', down: false }}
        empty="No rule answers this."
      />
    </div>
  );
}

function textOf(rule: Rule): string {
  const sources = rule.sources.map((source) => `${source.document} ${source.paragraph}`);
  return [rule.id, codeWords(rule.id), rule.asks, rule.binds, ...sources].join(' ').toLowerCase();
}

const columns: readonly Column<Rule>[] = [
  { key: 'topic', head: 'Topic', sort: (rule) => rule.topic, cell: (rule) => codeWords(rule.topic) },
  {
    key: 'rule',
    head: 'Rule',
    rowHead: true,
    sort: (rule) => rule.id,
    cell: (rule) => <Link to={`/rules/${rule.id}`}>{codeWords(rule.id)}</Link>,
  },
  {
    key: 'asks',
    head: 'Asks',
    cell: (rule) => (
      <div>
        <p>{rule.asks}</p>
        <p className="tw-small tw-soft">Binds: {rule.binds}</p>
        {rule.establishes.length > 0 && (
          <p className="tw-small tw-soft">Judges: {rule.establishes.map(capabilityWords).join(', ')}</p>
        )}
      </div>
    ),
  },
  {
    key: 'sources',
    head: 'Sources',
    cell: (rule) => (
      <ul className="tw-small">
        {rule.sources.map((source) => (
          <li key={`${source.document} ${source.paragraph}`}>
            <SourceLine source={source} />
          </li>
        ))}
      </ul>
    ),
  },
  {
    key: 'open',
    head: 'Open findings',
    align: 'end',
    sort: (rule) => rule.open,
    cell: (rule) => (rule.open === 0 ? 0 : <Link to={`/findings?rule=${rule.id}`}>{rule.open}</Link>),
  },
];
