/** The one place where this service reads a clock; everything else is handed the moment. */
export class Clock {
  now(): Date {
    return new Date();
  }
}

/** UTC to the minute, the form in which the rules speak of instants. */
export function instantOf(date: Date): string {
  return `${date.toISOString().slice(0, 16)}Z`;
}
