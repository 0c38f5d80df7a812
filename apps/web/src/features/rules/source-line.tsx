import { SourceStatus } from '../../ui/reason-tree.js';
import type { SourceStatusName } from '../../ui/source.js';

interface Told {
  readonly document: string;
  readonly paragraph: string;
  readonly edition: string;
  readonly status: string;
}

/** Document, paragraph and edition, and how well we know the text. */
export function SourceLine({ source }: { source: Told }) {
  return (
    <>
      {[`${source.document} ${source.paragraph}`, source.edition].filter(Boolean).join(', ')}{' '}
      <SourceStatus status={source.status as SourceStatusName} />
    </>
  );
}
