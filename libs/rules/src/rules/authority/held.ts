import { jobOfHold } from '../../dossier/hold.js';
import type { Hold } from '../../dossier/status.js';
import type { SourceRef } from '../../facts/source.js';
import { met, within } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { defineRule } from '../rule.js';

/** A hold is the word of the house itself. */
const house: SourceRef = {
  document: 'house policy',
  paragraph: 'the shop or operator holds the aircraft',
  edition: '',
  status: 'house-policy',
};
/** Nobody may operate an aircraft that was maintained or altered until an authorised person has approved it for return to service. */
const untilReleased = cfr('91.407(a)(1)');

/** One statement a hold, so that each gives its own reason and ends by itself. */
export const held = defineRule(
  {
    id: 'held',
    topic: 'authority',
    asks: 'No hold is placed on the aircraft, and no job is in work on it.',
    binds: 'Every aircraft.',
    sources: [house, untilReleased],
    messages: {
      free: 'No hold is placed.',
      ended: 'The hold ({reason}) does not count.',
      held: 'The aircraft is held: {reason} ({by}).',
      'in-work': 'The aircraft is in work: {reason} ({by}).',
    },
    establishes: [],
  },
  ({ dossier }) => {
    const { holds } = dossier.status;
    return holds.length === 0 ? [free] : holds.map(statement);
  },
);

const free: Draft = {
  subject: 'aircraft',
  clause: met('no-hold-recorded', { source: house }),
  messages: { met: 'free', 'not-met': 'free', 'cannot-tell': 'free', 'not-applicable': 'free' },
  data: {},
  effects: [{ stops: 'capability', capability: 'fly' }],
  remedies: [],
};

/** Outside its region a hold does nothing; inside it stops every flight. */
function statement({ id, reason, by, from, until }: Hold): Draft {
  const inWork = jobOfHold(id) !== null;
  return {
    subject: id,
    clause: within(
      inWork ? 'in-work' : 'on-hold',
      { from, ...(until === null ? {} : { before: until }) },
      { source: inWork ? untilReleased : house },
      'not-met',
      'met',
    ),
    messages: {
      met: 'ended',
      'not-met': inWork ? 'in-work' : 'held',
      'cannot-tell': 'held',
      'not-applicable': 'ended',
    },
    data: { reason, by, since: from },
    effects: [{ stops: 'capability', capability: 'fly' }],
    remedies: [{ kind: 'do', change: 'hold.lift', subject: id, facts: [] }],
  };
}
