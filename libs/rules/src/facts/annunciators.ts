import { oldPart23 } from './old-part-23.js';
import type { Sourced } from './source.js';

export type AnnunciatorUse = 'warning' | 'caution' | 'safe-operation';

/** Colours of lights; any other colour may stand for the rest if clearly different. */
export const annunciatorColours: Sourced<Readonly<Record<AnnunciatorUse, 'red' | 'amber' | 'green'>>> = {
  value: { warning: 'red', caution: 'amber', 'safe-operation': 'green' },
  source: oldPart23('23.1322', '(a) to (d)'),
};
