import { expect } from 'vitest';
import type { Client, Data } from './client.js';

/** Names of files and what stands in them. */
export type Files = Readonly<Record<string, string>>;

export interface Sending {
  /** Left out of the request where it is null. */
  readonly mode?: string | null;
  readonly differences?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

export async function sendFiles(client: Client, files: Files, sending: Sending = {}) {
  const { mode = 'dry-run', differences = '', headers = {} } = sending;
  const form = new FormData();
  if (mode !== null) form.set('mode', mode);
  if (differences !== '') form.set('differences', differences);
  for (const [file, content] of Object.entries(files)) form.append('files', new Blob([content]), file);
  const response = await fetch(`${client.url}/imports`, {
    method: 'POST',
    headers: { cookie: client.cookie, ...headers },
    body: form,
  });
  return { status: response.status, location: response.headers.get('location'), body: (await response.json()) as Data };
}

/** Sends, and waits for what came out. */
export async function importOf(client: Client, files: Files, sending: Sending = {}): Promise<Data> {
  const { status, location, body } = await sendFiles(client, files, sending);
  expect({ status, body }).toMatchObject({ status: 202 });
  return await importUntil(client, location, ({ state }) => state !== 'running');
}

export async function importUntil(
  client: Client,
  location: string | null,
  done: (found: Data) => boolean,
): Promise<Data> {
  for (let tries = 0; tries < 1200; tries += 1) {
    const answer = await fetch(`${client.url}${location}`, { headers: { cookie: client.cookie } });
    const found = (await answer.json()) as Data;
    if (done(found)) return found;
    await new Promise((wait) => setTimeout(wait, 100));
  }
  throw new Error('The import did not come so far.');
}
