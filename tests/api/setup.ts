import type { TestProject } from 'vitest/node';
import { founding } from './cast.js';
import { Server } from './server.js';

declare module 'vitest' {
  interface ProvidedContext {
    apiUrl: string;
    apiDataDir: string;
  }
}

/** One built API for all files of this project, with two organisations founded by the command that people use. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await Server.start();
  for (const each of Object.values(founding)) {
    const { code, output } = await server.run('house/found-cli.js', JSON.stringify(each));
    if (code !== 0) throw new Error(`founding failed: ${output}`);
  }
  project.provide('apiUrl', server.url);
  project.provide('apiDataDir', server.dataDir);
  return () => server.remove();
}
