import { hash, verify } from '@node-rs/argon2';

// OWASP Password Storage Cheat Sheet, argon2id with 19 MiB, two passes, one lane (status: from memory).
/** The package's number for argon2id. */
const ARGON2ID = 2;
const cost = { algorithm: ARGON2ID, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export const SHORTEST_PASSWORD = 10;

export function hashPassword(password: string): Promise<string> {
  return hash(password, cost);
}

let decoy: Promise<string> | null = null;

/**
 * Whether the password belongs to the hash. Without a hash the same work is done for nothing, so that an unknown address
 * takes as long as a wrong password.
 */
export async function passwordMatches(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword('nobody has this one');
  const against = stored ?? (await decoy);
  const matches = await verify(against, password).catch(() => false);
  return stored !== null && matches;
}
