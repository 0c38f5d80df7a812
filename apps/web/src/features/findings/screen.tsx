import { codeWords, whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { Link } from 'react-router';
import { ListBody } from '../../app/list-body.js';
import { useHouse } from '../../app/house.js';
import { useParamsState } from '../../app/use-params-state.js';
import { graphql, type ResultOf } from '../../graphql.js';
import { topicOf, topicOptions } from '../../trade/topics.js';
import { effectWords, subjectWords } from '../../trade/words.js';
import { Caution } from '../../ui/caution.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { StatusMark } from '../../ui/status-mark.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords, listWords } from '../../ui/words.js';

const FindingsQuery = graphql(`
  query Findings($filter: FindingFilter, $after: String) {
    findings(filter: $filter, first: 100, after: $after) {
      edges {
        cursor
        node {
          id
          key
          ruleId
          topic
          subjectName
          outcome
          effect
          text
          opensAt
          aircraft {
            id
            registration
            operator {
              id
              name
            }
            base {
              id
              name
              zone
            }
          }
        }
      }
      byEffect {
        effect
        count
      }
      pageInfo {
        hasNextPage
        endCursor
      }
      totalCount
    }
  }
`);

type Answer = ResultOf<typeof FindingsQuery>['findings'];
type Finding = Answer['edges'][number]['node'];

const effects = ['STOPS_AIRCRAFT', 'STOPS_OPERATION', 'STOPS_RELEASE', 'RECORD', 'ADVICE'] as const;
const effectOptions = effects.map((id) => ({ id, name: effectName(id) }));

function effectName(effect: string): string {
  return effectWords(effect.toLowerCase().replace(/_/g, '-'));
}

/** Open findings of the fleet, gravest first. */
export function FindingsScreen() {
  const house = useHouse();
  const [asked, ask] = useParamsState(['effect', 'topic', 'operator', 'base', 'rule']);
  const effect = effects.find((each) => each === asked.effect);
  const topic = topicOf(asked.topic);
  const filter = {
    effect: effect ? [effect] : null,
    topic: topic ? [topic] : null,
    operatorId: asked.operator || null,
    baseId: asked.base || null,
    ruleId: asked.rule || null,
  };
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(FindingsQuery, { variables: { filter } });
  return (
    <div className="tw-stack">
      <h1>Findings</h1>
      <FilterBar label="Which findings">
        <Pick label="Effect" value={asked.effect} onPick={(next) => ask({ effect: next })} options={effectOptions} />
        <Pick label="Topic" value={asked.topic} onPick={(next) => ask({ topic: next })} options={topicOptions} />
        <Pick
          label="Operator"
          value={asked.operator}
          onPick={(next) => ask({ operator: next })}
          options={house.operators}
        />
        <Pick label="Base" value={asked.base} onPick={(next) => ask({ base: next })} options={house.bases} />
      </FilterBar>
      {asked.rule && (
        <p>
          Only of the rule <Link to={`/rules/${asked.rule}`}>{codeWords(asked.rule)}</Link>.{' '}
          <Link to="/findings">Show all</Link>
        </p>
      )}
      <ListBody
        what="the findings"
        answer={(data ?? previousData)?.findings}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <>
            <p className="tw-soft">{summaryOf(answer)}</p>
            <DataTable
              caption="Open findings of the fleet"
              captionHidden
              columns={columns}
              rows={answer.edges.map((edge) => edge.node)}
              rowKey={(finding) => finding.id}
              empty={Object.values(asked).some(Boolean) ? 'No open finding answers this.' : 'Nothing is open.'}
            />
          </>
        )}
      </ListBody>
      <Caution />
    </div>
  );
}

function summaryOf(answer: Answer): string {
  const parts = effects.flatMap((effect) => {
    const count = answer.byEffect.find((each) => each.effect === effect)?.count ?? 0;
    // '1 stops the aircraft, 17 stop an operation'.
    const says = effectName(effect).toLowerCase();
    return count === 0 ? [] : [`${count} ${count === 1 ? says : says.replace(/^stops /, 'stop ')}`];
  });
  return `${countWords(answer.totalCount, 'open finding')}${parts.length === 0 ? '.' : `: ${listWords(parts)}.`}`;
}

const columns: readonly Column<Finding>[] = [
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
    key: 'effect',
    head: 'Effect',
    sort: (finding) => effects.indexOf(finding.effect),
    cell: (finding) => effectName(finding.effect),
  },
  {
    key: 'outcome',
    head: 'Judged',
    sort: (finding) => finding.outcome,
    cell: (finding) => (
      <StatusMark status={finding.outcome === 'NOT_MET' ? 'no' : 'cannot-tell'} word={codeWords(finding.outcome)} />
    ),
  },
  { key: 'text', head: 'Finding', cell: (finding) => finding.text },
  { key: 'subject', head: 'Of', sort: subjectWords, cell: subjectWords },
  { key: 'topic', head: 'Topic', sort: (finding) => finding.topic, cell: (finding) => codeWords(finding.topic) },
  {
    key: 'since',
    head: 'Open since',
    sort: (finding) => finding.opensAt,
    cell: (finding) => whenWords(finding.opensAt, finding.aircraft.base.zone),
  },
  {
    key: 'operator',
    head: 'Operator',
    sort: (finding) => finding.aircraft.operator?.name ?? null,
    cell: (finding) => finding.aircraft.operator?.name ?? '',
  },
];
