import type { Obligation, RecordKind } from '../dossier/status.js';
import { swingCauses } from '../facts/compass.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { anyOf, flight, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Effect } from '../verdict/result.js';
import { underControlledIfr } from './altitude-chain.js';
import { ac, cfr, practice } from './cite.js';
import { advice, gnssCapabilities } from './effects.js';
import type { Task } from './who-may.js';
import { release, tasks } from './who-may.js';

/** What one text asks after work: which entries answer, who may sign them, which flights it binds and what its lack costs. */
export interface Owed {
  /** Told apart where two texts ask for one test. */
  readonly suffix: string;
  readonly source: SourceRef;
  readonly kinds: readonly RecordKind[];
  readonly by?: (facts: Facts, owed: Obligation) => Task;
  /** Which flights it binds; absent: all. */
  readonly binds?: (facts: Facts, body: Clause) => Clause;
  /** No entry at all; absent: not-met. */
  readonly none?: Clause;
  readonly effects: (owed: Obligation) => readonly Effect[];
}

export const gnssGround = ac(
  '20-138D',
  'ground tests of an installation (from memory)',
  'change 2, 7 Apr 2016',
  'from-memory',
);
const performance = practice('performance report after work that touches ADS-B Out or its identity');
const maintenance = () => tasks.maintenance;

/** The tests and entries of `openObligations`, apart from the controls check, which is a rule of its own. */
export const owedAfterWork: Partial<Record<RecordKind, readonly Owed[]>> = {
  'static-leak-test': [
    {
      suffix: '',
      source: cfr('91.411(a)(2)'),
      // The full test of the static system includes the leak test.
      kinds: ['static-leak-test', 'static-system-test'],
      by: () => tasks.staticTest,
      binds: underControlledIfr,
      effects: () => [{ stops: 'capability', capability: 'ifr-aircraft' }],
    },
  ],
  'altitude-correspondence-test': [
    {
      suffix: '',
      source: cfr('91.413(b)'),
      kinds: ['altitude-correspondence-test'],
      by: () => tasks.correspondence,
      effects: () => [{ stops: 'capability', capability: 'altitude-reporting' }],
    },
    {
      suffix: ':ifr',
      source: cfr('91.411(a)(3)'),
      kinds: ['altitude-correspondence-test'],
      by: () => tasks.correspondence,
      binds: underControlledIfr,
      effects: () => [{ stops: 'capability', capability: 'ifr-aircraft' }],
    },
  ],
  'gnss-function-check': [
    { suffix: '', source: gnssGround, kinds: ['gnss-function-check'], by: maintenance, effects: gnss },
  ],
  'vhf-interference-check': [
    { suffix: '', source: gnssGround, kinds: ['vhf-interference-check'], by: maintenance, effects: gnss },
  ],
  'ads-b-report': [
    {
      suffix: '',
      source: performance,
      kinds: ['ads-b-report'],
      // No rule asks for the report; until one is made nobody knows whether 91.227 is met.
      none: unknown('performance-known', ['status.records'], { source: performance }),
      effects: () => [{ stops: 'capability', capability: 'ads-b-out' }],
    },
  ],
  'compass-swing': [
    {
      suffix: '',
      source: swingCauses.source,
      kinds: ['compass-swing'],
      by: () => tasks.compassSwing,
      effects: () => advice,
    },
  ],
  'pilot-flight-check': [
    {
      suffix: '',
      source: cfr('91.407(b)'),
      kinds: ['pilot-flight-check'],
      by: () => tasks.pilotCheck,
      binds: (_, body) =>
        anyOf(
          'crew-only-or-checked',
          [flight('crew-only', { crewOnly: true }, { source: cfr('91.407(b)') }), body],
          'cannot-tell',
        ),
      effects: () => [{ stops: 'capability', capability: 'fly' }],
    },
  ],
  'release-entry': [
    {
      suffix: '',
      source: cfr('91.407(a)'),
      kinds: ['release-entry'],
      by: ({ units, dossier }, { subject }) =>
        release(units.get(subject)?.functions ?? null, dossier.configuration.aircraft.certificate),
      effects: () => [{ stops: 'capability', capability: 'fly' }],
    },
  ],
};

/** Of the unit worked on; work that named no unit bears on every navigator. */
function gnss({ subject }: Obligation): readonly Effect[] {
  return gnssCapabilities.map((capability) => ({
    stops: 'capability',
    capability,
    ...(subject === 'aircraft' ? {} : { through: subject }),
  }));
}
