import { expect } from 'vitest';
import { founding, password } from './cast.js';
import { Client } from './client.js';
import type { Server } from './server.js';

const names = ['manager@one', 'technician@one', 'dispatcher@one', 'auditor@one', 'manager@two'];

/** The two houses of the cast on a server of a test's own, and its people signed in by name; `nobody` is not. */
export async function founded(server: Server): Promise<(name: string) => Client> {
  for (const each of Object.values(founding)) {
    const { code, output } = await server.run('house/found-cli.js', JSON.stringify(each));
    expect({ code, output }).toMatchObject({ code: 0 });
  }
  const people = new Map([['nobody', new Client(server.url)]]);
  for (const name of names) {
    const client = new Client(server.url);
    await client.signIn(`${name}.example`, password);
    people.set(name, client);
  }
  return (name) => {
    const found = people.get(name);
    if (!found) throw new Error(`Nobody is called ${name}.`);
    return found;
  };
}
