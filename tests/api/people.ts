import { password } from './cast.js';
import { Client } from './client.js';
import { shared } from './shared.js';

/** Somebody of the cast, signed in; null: nobody. */
export async function as(email: string | null): Promise<Client> {
  const client = new Client(shared.url);
  if (email === null) return client;
  const answer = await client.signIn(email, password);
  if (answer.errors !== undefined) throw new Error(JSON.stringify(answer.errors));
  return client;
}
