let words = clock();
const hearers = new Set<() => void>();

/** Notes that the server answered just now, on whatever way. */
export function noteAnswer(): void {
  const now = clock();
  if (now === words) return;
  words = now;
  for (const hear of hearers) hear();
}

/** The time of the last answer on this device's clock, '10:42'. */
export function lastAnswer(): string {
  return words;
}

export function onAnswer(hear: () => void): () => void {
  hearers.add(hear);
  return () => hearers.delete(hear);
}

function clock(): string {
  return new Date().toTimeString().slice(0, 5);
}
