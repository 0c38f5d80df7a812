/** What is wrong with one cell, row or file, for the person who has to mend it. */
export interface BadRow {
  readonly file: string;
  /** Line in the file, counted from 1 as editors do; null for the file as a whole. */
  readonly line: number | null;
  readonly column: string | null;
  /** What stands there, cut short. */
  readonly value: string | null;
  readonly reason: string;
  readonly wayOut: string;
}

/** Something the person should know that keeps nothing from being loaded. */
export interface Remark {
  readonly file: string;
  readonly line: number | null;
  readonly text: string;
}

/** Thrown by whatever reads a cell or plans a row; caught once, where file and line are known. */
export class CellProblem extends Error {
  constructor(
    readonly reason: string,
    readonly wayOut: string,
    readonly column: string | null = null,
  ) {
    super(reason);
  }
}

export function shortened(text: string): string {
  const plain = text.replace(/\s+/g, ' ').trim();
  return plain.length > 60 ? `${plain.slice(0, 57)}...` : plain;
}
