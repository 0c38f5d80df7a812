export type SourceStatusName =
  'verified' | 'secondary' | 'from-memory' | 'common-practice' | 'maker' | 'reading' | 'house-policy';

/** A place in a document, its edition, and how well we know it. */
export interface Source {
  readonly document: string;
  readonly paragraph: string;
  readonly edition: string;
  readonly status: SourceStatusName;
}

export const sourceStatusWords: Readonly<Record<SourceStatusName, string>> = {
  verified: 'text read',
  secondary: 'second-hand',
  'from-memory': 'from memory',
  'common-practice': 'common practice',
  maker: 'maker’s document',
  reading: 'our reading of the text',
  'house-policy': 'house policy',
};
