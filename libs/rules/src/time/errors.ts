/** What was wrong with a time value. The message says the way out; `field` names the value as the caller knows it. */
export class TimeError extends Error {
  override readonly name = 'TimeError';

  constructor(
    readonly code: 'not-a-date' | 'not-an-instant' | 'not-a-zone' | 'not-hours' | 'out-of-range',
    message: string,
  ) {
    super(message);
  }
}
