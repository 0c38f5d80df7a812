import { inject } from 'vitest';
import { ofThisFile } from '../api/at-once.js';

/** The demo for all files of this project: each of those that run at once has another, with its own data. */
export const demo = ofThisFile(inject('demos'));
