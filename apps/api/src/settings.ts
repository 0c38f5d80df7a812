import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the checkout lies: this file is `apps/api/{src,dist}/settings.*`. */
export const repositoryRoot = resolve(fileURLToPath(new URL('../../..', import.meta.url)));

/** The SDL stays beside the sources and is read from there at run time. */
export const sdlPattern = resolve(repositoryRoot, 'apps/api/src/**/*.graphql');

export interface Settings {
  readonly port: number;
  readonly host: string;
  readonly databaseUrl: string | null;
  /** The same server without a pooler between: for what needs a session that lasts (listening, migrating). */
  readonly databaseDirectUrl: string | null;
  readonly dataDir: string;
  /** `auto`: demo only while bound to loopback. */
  readonly demo: 'on' | 'off' | 'auto';
  /** Further origins that may send commands, beside the address the page was loaded from. */
  readonly origins: readonly string[];
  /** True when a reverse proxy in front sets the forwarded headers. */
  readonly trustProxy: boolean;
  /** Of one signed-in browser, or of one address from which nobody is signed in. */
  readonly requestsPerMinute: number;
  /** Who sends it may read /metrics from elsewhere; empty: nobody may. */
  readonly metricsToken: string;
  /** False where workers of their own do what the API otherwise does beside serving. */
  readonly worker: boolean;
}

/** A setting that cannot be used. The message names it and says what to do. */
export class SettingsError extends Error {}

/**
 * Reads the environment.
 * @throws SettingsError naming the variable and the way out
 */
export function readSettings(environment: NodeJS.ProcessEnv): Settings {
  const port = Number(environment['PORT'] ?? '4300');
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    throw new SettingsError(
      `PORT is "${environment['PORT']}". Give a number from 0 to 65535, or leave it out for 4300.`,
    );
  }
  const requestsPerMinute = Number(environment['REQUESTS_PER_MINUTE'] || '3000');
  if (!Number.isInteger(requestsPerMinute) || requestsPerMinute < 1) {
    throw new SettingsError(
      `REQUESTS_PER_MINUTE is "${environment['REQUESTS_PER_MINUTE']}". Give a whole number from 1, or leave it out for 3000.`,
    );
  }
  const demo = environment['DEMO'] ?? 'auto';
  if (demo !== 'on' && demo !== 'off' && demo !== 'auto') {
    throw new SettingsError(`DEMO is "${demo}". Use "on" or "off", or leave it out.`);
  }
  const worker = environment['WORKER'] ?? 'on';
  if (worker !== 'on' && worker !== 'off') {
    throw new SettingsError(`WORKER is "${worker}". Use "off" where a worker of its own runs, or leave it out.`);
  }
  const databaseUrl = addressOf(environment, 'DATABASE_URL', 'to use the built-in server');
  return {
    port,
    host: environment['HOST'] || '127.0.0.1',
    databaseUrl,
    databaseDirectUrl: addressOf(environment, 'DATABASE_DIRECT_URL', 'if DATABASE_URL has no pooler before it'),
    dataDir: resolve(repositoryRoot, environment['DATA_DIR'] || '.data'),
    demo,
    origins: (environment['ORIGINS'] ?? '').split(',').filter((origin) => origin !== ''),
    trustProxy: environment['TRUST_PROXY'] === 'on',
    requestsPerMinute,
    metricsToken: environment['METRICS_TOKEN'] ?? '',
    worker: worker === 'on',
  };
}

function addressOf(environment: NodeJS.ProcessEnv, name: string, leftOut: string): string | null {
  const url = environment[name] || null;
  if (url === null || /^postgres(ql)?:\/\//.test(url)) return url;
  throw new SettingsError(`${name} must start with postgres:// or postgresql://. Leave it out ${leftOut}.`);
}

export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127\.\d+\.\d+\.\d+$/.test(host);
}

/** Demo accounts have known passwords, so they exist only where nobody else can reach them, or when asked for by name. */
export function demoWanted(settings: Settings): boolean {
  return settings.demo === 'on' || (settings.demo === 'auto' && isLoopback(settings.host));
}
