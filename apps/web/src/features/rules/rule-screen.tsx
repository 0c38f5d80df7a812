import { capabilityWords, codeWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import type { ReactNode } from 'react';
import { Link, useParams } from 'react-router';
import { problemOf } from '../../app/problem.js';
import { Caution } from '../../ui/caution.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { countWords, listWords } from '../../ui/words.js';
import { BitesTable } from './bites-table.js';
import { CasesTable } from './cases-table.js';
import { RuleQuery, type RuleDetail } from './rule-query.js';
import { costWords, limitsOf, messageWords } from './rule-words.js';
import { SourceLine } from './source-line.js';
import './rules.css';

/** One rule: what it asks of whom, what it costs and says, on which source, with worked cases and the aircraft it bites now. */
export function RuleScreen() {
  const { id = '' } = useParams();
  const { data, error, refetch } = useQuery(RuleQuery, { variables: { id, ruleId: id } });
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the rule" />;
  if (!data.rule) return <NoSuchRule />;
  const { rule, findings } = data;
  return (
    <div className="tw-stack-wide">
      <header className="tw-stack">
        <p className="tw-small">
          <Link to="/rules">Rules</Link>, {codeWords(rule.entry.topic).toLowerCase()}
        </p>
        <h1>{codeWords(rule.entry.id)}</h1>
        <p>{rule.entry.asks}</p>
        <Scope rule={rule} />
      </header>
      <Part id="bites" title="Aircraft that it bites now">
        {findings.totalCount > findings.edges.length && (
          <p>
            The first {findings.edges.length} of {findings.totalCount}.{' '}
            <Link to={`/findings?rule=${rule.entry.id}`}>Show all</Link>
          </p>
        )}
        <BitesTable findings={findings} />
      </Part>
      <Part id="cases" title="Worked cases">
        <p className="tw-soft">
          {countWords(rule.cases.length, 'case')} of this rule’s own test, as they ran with the rules in force.
        </p>
        <CasesTable cases={rule.cases} />
      </Part>
      <Limits rule={rule} />
      <Part id="says" title="What it can say">
        <ul className="tw-rule-lines">
          {rule.messages.map((message) => (
            <li key={message.id}>{messageWords(message.text)}</li>
          ))}
        </ul>
      </Part>
      <Part id="sources" title="Sources">
        <ul className="tw-rule-lines">
          {rule.entry.sources.map((source) => (
            <li key={`${source.document} ${source.paragraph}`}>
              <SourceLine source={source} />
            </li>
          ))}
        </ul>
      </Part>
      <Caution />
    </div>
  );
}

function Scope({ rule }: { rule: RuleDetail }) {
  const costs = costWords(rule.costs);
  return (
    <dl className="tw-facts">
      <div>
        <dt>Binds</dt>
        <dd>{rule.entry.binds}</dd>
      </div>
      {rule.entry.establishes.length > 0 && (
        <div>
          <dt>Judges</dt>
          <dd>{listWords(rule.entry.establishes.map(capabilityWords))}</dd>
        </div>
      )}
      <div>
        <dt>Costs where it is not met</dt>
        <dd>{costs.join('; ')}</dd>
      </div>
    </dl>
  );
}

function Limits({ rule }: { rule: RuleDetail }) {
  const limits = limitsOf(rule.values);
  if (limits.length === 0) return null;
  return (
    <Part id="limits" title="Limits in these cases">
      <ul className="tw-rule-lines">
        {limits.map((limit) => (
          <li key={`${limit.name} ${limit.amounts}`}>
            {limit.name}: {limit.amounts}.{' '}
            <span className="tw-soft tw-small">
              <SourceLine source={limit.source} />
            </span>
          </li>
        ))}
      </ul>
    </Part>
  );
}

function Part({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  return (
    <section aria-labelledby={id} className="tw-stack">
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

function NoSuchRule() {
  return (
    <Empty title="There is no such rule in force.">
      <p>It may have gone under another name, or the link may be old.</p>
      <Link to="/rules">To the rules</Link>
    </Empty>
  );
}
