/** Sizes above 1 as the trade writes them; in numbers 1/0 is 0 and each larger one is one less. */
const large = ['1/0', '2/0', '3/0', '4/0'] as const;

/** An American wire gauge in words: 20 is '20', 0 is '1/0', -3 is '4/0'. */
export function wireSizeWords(awg: number): string {
  return large[-awg] ?? String(awg);
}

/** The gauge that a text names: '2/0' and '00' are -1. Null: it is no large size, and a number if anything. */
export function readLargeWire(text: string): number | null {
  const plain = text.replace(/\s/g, '');
  const index = /^0{1,4}$/.test(plain) ? plain.length - 1 : large.findIndex((size) => size === plain);
  return index < 0 ? null : 0 - index;
}
