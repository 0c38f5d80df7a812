import { housePolicy, stretchesOf } from '../../catalogue/policy.js';
import type { MeterDefinition, MeterReading } from '../../dossier/meters.js';
import { instantOf, minutesOf, minutesPerDay } from '../../time/instant.js';
import { allOf, within } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { advice } from '../effects.js';
import { practice } from '../cite.js';
import { duringPolicy } from '../house-policy.js';
import { defineRule } from '../rule.js';

/** What a reading that is too old does to limits in hours is the algebra's business; this speaks of it in time. */
export const readingAge = defineRule(
  {
    id: 'reading-age',
    topic: 'inspections',
    asks: 'Each meter was read within the days after which the house wants to hear of an old reading.',
    binds:
      'Meters that were read, in houses that have set the policy; not the time that an emergency transmitter has sent.',
    sources: [practice('for how many days a meter reading carries limits in hours is for the house to say')],
    messages: {
      fresh: '{meter}: read {read}, young enough.',
      old: '{meter}: last read {read}, longer ago than the house wants; limits in hours hang on it.',
      'not-asked': '{meter}: the house sets no age.',
    },
    establishes: [],
  },
  ({ dossier, catalogue, zone }) => {
    const stretches = stretchesOf(catalogue.policies, 'reading-age', zone);
    if (stretches.length === 0) return [];
    const speak = (meter: MeterDefinition, reading: MeterReading): Draft => ({
      subject: meter.id,
      clause: allOf(
        'read-lately',
        stretches.map((stretch) => {
          const count = stretch.policy.body.noticeDays ?? stretch.policy.body.days;
          const before = instantOf(minutesOf(reading.asOf) + count * minutesPerDay);
          const limit = { amount: count, unit: 'days' };
          return duringPolicy(
            stretch,
            within('read-within-days', { before }, { source: housePolicy(stretch.policy), limit }),
          );
        }),
        'not-applicable',
      ),
      messages: { met: 'fresh', 'not-met': 'old', 'cannot-tell': 'old', 'not-applicable': 'not-asked' },
      data: { meter: meter.name, read: reading.asOf.slice(0, 10) },
      effects: advice,
      remedies: [{ kind: 'do', change: 'meter.read', subject: meter.id, facts: [] }],
    });
    return dossier.meters.definitions.flatMap((meter) => {
      const reading = dossier.meters.readings[meter.id];
      return reading && meter.kind !== 'elt-transmitter' ? [speak(meter, reading)] : [];
    });
  },
);
