import { AsyncLocalStorage } from 'node:async_hooks';
import type { LoggerService } from '@nestjs/common';

const correlation = new AsyncLocalStorage<string>();

/** Runs `work` so that everything it logs carries this id. */
export function withCorrelation<T>(id: string, work: () => T): T {
  return correlation.run(id, work);
}

export function correlationId(): string {
  return correlation.getStore() ?? 'none';
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

  request(fields: Readonly<Record<string, unknown>>): void {
    this.line('info', 'request', fields);
  }

  event(message: string, fields: Readonly<Record<string, unknown>> = {}): void {
    this.line('info', message, fields);
  }

  failure(reference: string, error: unknown): void {
    const known = error instanceof Error ? { message: error.message, stack: error.stack } : { message: String(error) };
    this.line('error', 'failure', { reference, ...known });
  }

  // What the framework has to say in good health is noise; its warnings and errors are kept.
  log(): void {}
  debug(): void {}
  verbose(): void {}
  warn(message: unknown): void {
    this.line('warn', String(message), {});
  }
  error(message: unknown, ...rest: unknown[]): void {
    this.line('error', String(message), { rest: rest.map(String) });
  }

  private line(level: string, message: string, fields: Readonly<Record<string, unknown>>): void {
    this.write(JSON.stringify({ at: this.now().toISOString(), level, id: correlationId(), message, ...fields }));
  }
}
