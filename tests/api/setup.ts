import type { TestProject } from 'vitest/node';
import { founding } from './cast.js';
import { Server } from './server.js';

declare module 'vitest' {
  interface ProvidedContext {
    apis: readonly { readonly url: string; readonly dataDir: string }[];
  }
}

/** Built APIs, one for each file that may run at once, with two organisations founded by the command that people use. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const servers = await Promise.all(Array.from({ length: project.config.maxWorkers }, startFounded));
  project.provide(
    'apis',
    servers.map(({ url, dataDir }) => ({ url, dataDir })),
  );
  return async () => void (await Promise.all(servers.map((server) => server.remove())));
}

async function startFounded(): Promise<Server> {
  const server = await Server.start();
  for (const each of Object.values(founding)) {
    const { code, output } = await server.run('house/found-cli.js', JSON.stringify(each));
    if (code !== 0) throw new Error(`founding failed: ${output}`);
  }
  return server;
}
