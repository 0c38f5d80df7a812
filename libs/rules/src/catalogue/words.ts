import { z } from 'zod';
import type { Read } from './read.js';

/** Text and ids as both the catalogue and the dossier write them. */
export const id = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._:>/-]{0,79}$/, 'use 1 to 80 letters, digits and . _ : > / -');
export const shortText = z.string().trim().min(1, 'must not be empty').max(200);
export const note = z.string().trim().min(1, 'must not be empty').max(4000);

/** Where a unit sits. */
export const place = z
  .enum(['pilot-panel', 'centre-stack', 'copilot-panel', 'glareshield', 'pedestal', 'remote'])
  .meta({ id: 'Place' });
export type Place = Read<typeof place>;
