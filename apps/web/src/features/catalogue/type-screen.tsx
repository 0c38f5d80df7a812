import { useQuery } from '@apollo/client/react';
import type { EquipmentType } from '@tallywing/rules';
import { Link, useParams } from 'react-router';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { Caution } from '../../ui/caution.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { Fitted } from './components/fitted.js';
import { Moving } from './components/moving.js';
import { TypeDetails } from './components/type-details.js';
import { documentWords, Versions } from './components/versions.js';
import { pathOf } from './paths.js';
import { TypeQuery, type TypePage } from './query.js';
import './catalogue.css';

/** One version of a product: what its manual says, the other versions, and the aircraft that have it. */
export function TypeScreen() {
  const { id = '' } = useParams();
  const { data, error, refetch } = useQuery(TypeQuery, { variables: { id } });
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the entry" />;
  const type = data.equipmentType;
  return type ? <TypeView key={type.id} type={type} /> : <NoSuchType />;
}

export function NoSuchType() {
  return (
    <Empty title="The catalogue has no such entry.">
      <Link to="/catalogue">To the catalogue</Link>
    </Empty>
  );
}

function TypeView({ type }: { type: TypePage }) {
  const { viewer } = useSession();
  const mayWrite = viewer.may.includes('catalogue.write');
  const current = type.supersededBy === null;
  const others = type.fitted.units.some(({ typeId }) => typeId !== type.id);
  return (
    <div className="tw-stack-wide">
      <header className="tw-screen-head">
        <div>
          <h1>
            {type.maker} {type.name}
          </h1>
          <p className="tw-soft">
            Part number <span className="tw-mono">{type.partNumber}</span>; short name{' '}
            <span className="tw-mono">{type.family}</span>; read from {documentWords(type)}
          </p>
        </div>
        {mayWrite && (
          <div className="tw-row tw-no-print">
            {current && (
              <Link to={pathOf(type.id, 'revise')} className="tw-button-link" data-look="main">
                Revise
              </Link>
            )}
            <Link to={pathOf(type.id, 'copy')} className="tw-button-link">
              Copy as another product
            </Link>
          </div>
        )}
      </header>
      {type.supersededBy !== null && (
        <p role="note" className="tw-sheet">
          A newer version took the place of this one. It stays for the aircraft whose units were recorded with it.{' '}
          <Link to={pathOf(type.supersededBy)}>To the version that followed</Link>
        </p>
      )}
      <section className="tw-sheet tw-stack" aria-labelledby="manual-title">
        <h2 id="manual-title">What the manual says</h2>
        <TypeDetails type={type.body as EquipmentType} />
      </section>
      <section className="tw-stack" aria-labelledby="versions-title">
        <h2 id="versions-title">Versions</h2>
        <Versions type={type} />
      </section>
      <section className="tw-stack" aria-labelledby="fitted-title">
        <h2 id="fitted-title">Aircraft that have it</h2>
        <Fitted type={type} />
      </section>
      {current && others && mayWrite && <Moving typeId={type.id} />}
      <Caution />
    </div>
  );
}
