import { judgeAltimeterTest } from '../../calculations/altimeter-test.js';
import { altimeterTestTable, appendixE, scaleErrorTable } from '../../facts/altimeter.js';
import { underControlledIfr, unitsWith } from '../altitude-chain.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

/** Every point of the tables up to the tested altitude; between rows the lower row's tolerance. */
export const altimeterReadings = defineRule(
  {
    id: 'altimeter-readings',
    topic: 'readings',
    asks: 'The readings of the newest altimeter test are complete and within part 43 appendix E(b).',
    binds:
      'Altimeters whose newest entry carries readings, under IFR in controlled airspace; an entry without readings stands by its own statement.',
    sources: [scaleErrorTable.source, altimeterTestTable.source, appendixE('(b)')],
    messages: {
      within: '{item}: the readings of {done} are within appendix E.',
      outside: '{item}: {what} at {at} reads {value} {unit}, the limit is {limit}.',
      failed: '{item}: the test of {done} was entered as failed.',
      incomplete: '{item}: the readings of {done} are not complete.',
      none: '{item}: no readings to judge for this flight.',
    },
    establishes: [],
  },
  (facts) =>
    unitsWith(facts, 'altimeter').map(({ id, unit }) => {
      const found = recordedReadings(
        facts,
        { kinds: ['altimeter-test'], subjects: [id], by: tasks.altimeterTest },
        ({ altimeter }) => (altimeter === null ? null : judgeAltimeterTest(altimeter)),
      );
      return {
        subject: id,
        clause: underControlledIfr(facts, found.clause),
        messages: found.messages,
        data: { item: unit.name, ...found.data },
        effects: [{ stops: 'capability', capability: 'ifr-aircraft' }],
        remedies: [recordIt('altimeter-test', id)],
      };
    }),
);
