import type { TestProject } from 'vitest/node';
import { Server } from '../api/server.js';

declare module 'vitest' {
  interface ProvidedContext {
    demos: readonly { readonly url: string; readonly dataDir: string }[];
  }
}

/** The built application with the demo, one for each file that may run at once, on a database of its own. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const servers = await Promise.all(
    Array.from({ length: project.config.maxWorkers }, () => Server.start({ DEMO: 'on' })),
  );
  project.provide(
    'demos',
    servers.map(({ url, dataDir }) => ({ url, dataDir })),
  );
  return async () => void (await Promise.all(servers.map((server) => server.remove())));
}
