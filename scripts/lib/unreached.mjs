/**
 * Which characters of one script ran in one process, by the block coverage of V8: ranges lie in one another, the inner counts.
 * @param {number} length
 * @param {{ ranges: { startOffset: number, endOffset: number, count: number }[] }[]} functions
 */
export function ran(length, functions) {
  const here = new Uint8Array(length).fill(1);
  const ranges = functions
    .flatMap((each) => each.ranges)
    .sort((a, b) => a.startOffset - b.startOffset || b.endOffset - a.endOffset);
  for (const { startOffset, endOffset, count } of ranges) here.fill(count > 0 ? 1 : 0, startOffset, endOffset);
  return here;
}

/**
 * The pieces of a text that ran in no process, with what the compiler adds for decorators left out.
 * @param {string} text
 * @param {Uint8Array} everRan
 * @returns {{ at: number, piece: string }[]}
 */
export function unreached(text, everRan) {
  const found = [];
  for (let at = 0; at < text.length;) {
    if (everRan[at]) {
      at += 1;
      continue;
    }
    let end = at;
    while (end < text.length && !everRan[end]) end += 1;
    const piece = text.slice(at, end).trim().replace(/\s+/g, ' ');
    if (/\w/.test(piece) && !isOfCompiler(text, at)) found.push({ at, piece });
    at = end;
  }
  return found;
}

/** The helpers stand at the top and end where the first import begins. */
function isOfCompiler(text, at) {
  return /^var __\w+ = /.test(text) && at < text.indexOf('\nimport ');
}
