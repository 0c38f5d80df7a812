export type SortKey = string | number | null;
export interface SortState {
  readonly key: string;
  readonly down: boolean;
}

/** A sorted copy; equal rows keep their order, and a row without a value comes last in either direction. */
export function sortRows<Row>(rows: readonly Row[], by: (row: Row) => SortKey, down: boolean): Row[] {
  return [...rows].sort((a, b) => {
    const left = by(a);
    const right = by(b);
    if (left === null || right === null) return Number(left === null) - Number(right === null);
    const order =
      typeof left === 'number' && typeof right === 'number'
        ? left - right
        : String(left).localeCompare(String(right), 'en', { numeric: true });
    return down ? -order : order;
  });
}
