import { judgeCompass } from '../../calculations/compass.js';
import {
  compassDeviationDeg,
  compassLoadsException,
  compassStepDeg,
  compassStepRotorcraftDeg,
} from '../../facts/compass.js';
import { implies } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { compassFiguresBind } from '../compass-basis.js';
import { itemFitted } from '../equipment-items.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

/** Figures of a certification basis, not of an operation: they advise and ground nothing. */
export const compassDeviation = defineRule(
  {
    id: 'compass-deviation',
    topic: 'readings',
    asks: 'The newest compass swing shows at most 10 degrees of deviation, in steps of at most 30 degrees (rotorcraft 45), with engines running and radios stated; more from electric loads only where a placard names them and a stabilized direction indicator is fitted.',
    binds: 'Aircraft certificated under CAR 3, part 23 before 2017 or part 27; advice only.',
    sources: [
      compassDeviationDeg.source,
      compassLoadsException.source,
      compassStepDeg.source,
      compassStepRotorcraftDeg.source,
    ],
    messages: {
      within: 'The compass swing of {done} is within its limits.',
      outside: 'Compass, {what} at {at}: {value} {unit}, the limit is {limit}.',
      failed: 'The compass swing of {done} was entered as failed.',
      incomplete: 'The compass swing of {done} cannot be judged in full.',
      none: 'No compass swing with readings that this basis judges.',
    },
    establishes: [],
  },
  (facts) => {
    const { kind } = facts.dossier.configuration.aircraft;
    const { inside } = itemFitted(facts, 'direction-gyro', compassLoadsException.source);
    const stabilized = inside === 'met' ? true : inside === 'not-met' ? false : null;
    const found = recordedReadings(
      facts,
      { kinds: ['compass-swing'], subjects: ['aircraft'], by: tasks.compassSwing },
      ({ compass }) =>
        compass === null ? null : judgeCompass(compass, kind === 'helicopter' ? 'rotorcraft' : 'airplane', stabilized),
    );
    const draft: Draft = {
      subject: 'aircraft',
      clause: found.data.done === null ? found.clause : implies(compassFiguresBind(facts), found.clause),
      messages: found.messages,
      data: found.data,
      effects: [{ stops: 'nothing', kind: 'advice' }],
      remedies: [recordIt('compass-swing'), { kind: 'do', change: 'equipment.state', subject: 'aircraft', facts: [] }],
    };
    return [draft];
  },
);
