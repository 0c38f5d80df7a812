/** A failure that a person can act on: what went wrong, and what to do next. */
export class StepError extends Error {
  /**
   * @param {string} message what went wrong
   * @param {string} wayOut what to do next
   * @param {string} [details] output of the command that failed
   */
  constructor(message, wayOut, details = '') {
    super(message);
    this.wayOut = wayOut;
    this.details = details;
  }
}

/** What a step returns when there was nothing to do. */
export const upToDate = Symbol('up to date');

export const seconds = (milliseconds) => `${(milliseconds / 1000).toFixed(1)} s`;

const column = (name) => `  ${name.padEnd(34)} `;

/**
 * Runs one step and prints one line for it: its name at once, its time when it is done.
 * The work must print nothing itself. A step that returns `upToDate` is printed as such; a string is printed behind the time.
 */
export async function step(name, work) {
  const from = Date.now();
  process.stdout.write(column(name));
  try {
    const result = await work();
    const note = typeof result === 'string' ? `  ${result}` : '';
    console.log(result === upToDate ? 'up to date' : seconds(Date.now() - from) + note);
    return result;
  } catch (error) {
    console.log(`FAILED after ${seconds(Date.now() - from)}`);
    throw error;
  }
}

/** Prints a failure with its way out. */
export function explain(error) {
  if (error instanceof StepError) {
    if (error.details) console.error(`\n${error.details.trimEnd()}`);
    console.error(`\n${error.message}\nWhat to do: ${error.wayOut}`);
  } else {
    console.error(error);
    console.error('\nThis is a fault of the script itself. What to do: report it with the lines above.');
  }
}

/** Runs a whole command: exit code from `work` (none means 0), 1 after a failure, which is explained. */
export async function command(work) {
  try {
    process.exitCode = (await work()) ?? 0;
  } catch (error) {
    explain(error);
    process.exitCode = 1;
  }
}
