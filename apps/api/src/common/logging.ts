import { AsyncLocalStorage } from 'node:async_hooks';
import type { LoggerService } from '@nestjs/common';

type Fields = Readonly<Record<string, unknown>>;

const correlation = new AsyncLocalStorage<{ readonly id: string; noted: Fields }>();

/** Runs `work` so that everything it logs carries this id. */
export function withCorrelation<T>(id: string, work: () => T): T {
  return correlation.run({ id, noted: {} }, work);
}

export function correlationId(): string {
  return correlation.getStore()?.id ?? 'none';
}

/** What the line of this request tells beside its address: ids and counts, never what people wrote. */
export function noteInLog(fields: Fields): void {
  const store = correlation.getStore();
  if (store) store.noted = { ...store.noted, ...fields };
}

export function notedForLog(): Fields {
  return correlation.getStore()?.noted ?? {};
}

/** Log lines are JSON, one a line, with the id of the request they belong to. Start-up lines are for people. */
export class AppLog implements LoggerService {
  constructor(
    private readonly write: (line: string) => void = (line) => process.stdout.write(`${line}\n`),
    private readonly now: () => Date = () => new Date(),
  ) {}

  say(line: string): void {
    this.write(`tallywing: ${line}`);
  }

  request(fields: Fields): void {
    this.line('info', 'request', fields);
  }

  event(message: string, fields: Fields = {}): void {
    this.line('info', message, fields);
  }

  failure(reference: string, error: unknown): void {
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const code = (error as { code?: unknown } | null)?.code;
    this.line('error', 'failure', {
      reference,
      ...(typeof code === 'string' ? { code } : {}),
      error: withoutValues(told),
    });
  }

  // What the framework has to say in good health is noise; its warnings and errors are kept.
  log(): void {}
  debug(): void {}
  verbose(): void {}
  warn(message: unknown): void {
    this.line('warn', withoutValues(String(message)), {});
  }
  error(message: unknown, ...rest: unknown[]): void {
    this.line('error', withoutValues(String(message)), { rest: rest.map((each) => withoutValues(String(each))) });
  }

  private line(level: string, message: string, fields: Fields): void {
    this.write(JSON.stringify({ at: this.now().toISOString(), level, id: correlationId(), message, ...fields }));
  }
}

/**
 * Databases and libraries put what they did not like into their words: addresses, names, tokens. What went wrong and where is
 * enough to find it, so texts in quotes and everything that looks like an address or a secret goes.
 */
function withoutValues(told: string): string {
  const [message = '', ...places] = told.split('\n');
  const clean = (text: string): string =>
    text
      .replace(/[^\s@"'<>()]+@[^\s@"'<>()]+\.[^\s@"'<>()]+/g, '[address]')
      .replace(/\b[\w-]{40,}\b/g, '[secret]')
      .replace(/\$argon2\S+/g, '[secret]');
  // Lines of the stack name files; only what stands before them can repeat a value.
  const words = clean(message).replace(/"[^"]*"|'[^']*'|`[^`]*`/g, '[value]');
  return [words, ...places.filter((line) => /^\s*at /.test(line)).map(clean)].join('\n');
}
