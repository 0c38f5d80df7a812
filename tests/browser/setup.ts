import type { TestProject } from 'vitest/node';
import { Server } from '../api/server.js';

declare module 'vitest' {
  interface ProvidedContext {
    demoUrl: string;
    demoDataDir: string;
  }
}

/** The built application with the demo, on a database of its own. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await Server.start({ DEMO: 'on' });
  project.provide('demoUrl', server.url);
  project.provide('demoDataDir', server.dataDir);
  return () => server.remove();
}
