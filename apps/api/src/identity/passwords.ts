import { hash, verify } from '@node-rs/argon2';
import { badInput } from '../common/errors.js';

// OWASP Password Storage Cheat Sheet, argon2id with 19 MiB, two passes, one lane (status: from memory).
/** The package's number for argon2id. */
const ARGON2ID = 2;
const cost = { algorithm: ARGON2ID, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

const SHORTEST_PASSWORD = 10;

/** @throws AppError BAD_INPUT naming the field */
export function checkPassword(password: string, field: string): void {
  if (password.length < SHORTEST_PASSWORD)
    throw badInput(field, `The password has fewer than ${SHORTEST_PASSWORD} characters.`, 'Choose a longer one.');
  if (password.length > 1000)
    throw badInput(field, 'The password has more than 1,000 characters.', 'Choose a shorter one.');
}

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
