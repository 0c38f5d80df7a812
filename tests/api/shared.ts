import { inject } from 'vitest';
import { ofThisFile } from './at-once.js';

/** The API for all test files that need none of their own: each of those that run at once has another, with its own data. */
export const shared = ofThisFile(inject('apis'));
