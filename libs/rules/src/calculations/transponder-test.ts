import type { TransponderReadings } from '../dossier/readings.js';
import { inForce } from '../facts/editions.js';
import type { TransponderClassFacts } from '../facts/transponder.js';
import {
  appendixF,
  combinedAllCall,
  diversityLeastDb,
  modeDifferenceDb,
  portableSetDb,
  radiatedSuppressionRates,
  replyCentreMHz,
  replyFrequency,
  sensitivityDbm,
  suppressionEqualMostPercent,
  suppressionNineDbLeastPercent,
  suppressionRates,
  transponderClasses,
  wrongAddressesLeast,
} from '../facts/transponder.js';
import type { JudgedPoint, JudgedReadings, Limit } from './judged.js';
import { cannotTell, held, heldInDoubt, judged, stated } from './judged.js';
import { peakPower } from './transponder-power.js';

/**
 * Transponder test against part 43 appendix F, by class. `day` is the day of the test: the edition in force on it is
 * asked; without a day the one in force since 17 October 2023. MHz, dBm, W, dBW, dB, percent.
 * A sensitivity that only the 3 dB for a portable set would save is cannot-tell: the text does not say which limit moves.
 * So is a suppression rate above 240 with a portable set: whether one was approved at that place is not recorded.
 */
export function judgeTransponderTest(readings: TransponderReadings, day = '9999-12-31'): JudgedReadings {
  const facts: TransponderClassFacts | null = readings.equipmentClass && transponderClasses[readings.equipmentClass];
  if (!facts) {
    const unknown = cannotTell({ what: 'equipment-class', source: appendixF('(a) to (j)') });
    return judged([unknown, ...suppressedReplies(readings), modeDifference(readings), ...peakPower(readings, null)]);
  }
  return judged([
    replyFrequencyPoint(readings, facts),
    suppressionRate(readings, facts),
    ...suppressedReplies(readings),
    sensitivity(readings, facts),
    modeDifference(readings),
    ...peakPower(readings, facts),
    ...(facts.modeS ? modeSOnly(readings, day) : []),
  ]);
}

function replyFrequencyPoint(readings: TransponderReadings, facts: TransponderClassFacts): JudgedPoint {
  const asked = { what: 'reply-frequency', value: readings.replyMHz, unit: 'MHz' };
  const usual = replyFrequency[facts.replyGroup];
  if (facts.replyGroup !== 'mode-s-low' || readings.tighterFrequency === false) {
    return held({ ...asked, limit: around(replyCentreMHz, usual.value), source: usual.source });
  }
  const tight = replyFrequency['mode-s-low-tighter'];
  if (readings.tighterFrequency) {
    return held({ ...asked, limit: around(replyCentreMHz, tight.value), source: tight.source });
  }
  const limits = { narrow: around(replyCentreMHz, tight.value), wide: around(replyCentreMHz, usual.value) };
  return heldInDoubt({ ...asked, ...limits, source: usual.source });
}

function suppressionRate(readings: TransponderReadings, facts: TransponderClassFacts): JudgedPoint {
  const { from, lowTop, highTop } = suppressionRates.value;
  const asked = { what: 'suppression-rate', value: readings.suppressionRatePerS, unit: '1/s' };
  const wide = { least: from, most: facts.suppressionTopPerS ?? highTop };
  // A portable set works at a nominal 235 a second; a radiated rate above 240 has to be approved for the set at that place.
  if (readings.testSet !== 'bench') {
    const { value, source } = radiatedSuppressionRates;
    return heldInDoubt({ ...asked, narrow: { least: value.from, most: value.to }, wide, source });
  }
  const { source } = suppressionRates;
  if (facts.suppressionTopPerS !== null) return held({ ...asked, limit: wide, source });
  return heldInDoubt({ ...asked, narrow: { least: from, most: lowTop }, wide, source });
}

function suppressedReplies(readings: TransponderReadings): JudgedPoint[] {
  return [
    held({
      what: 'suppression-equal',
      value: readings.repliesEqualPercent,
      limit: { most: suppressionEqualMostPercent.value },
      unit: '%',
      source: suppressionEqualMostPercent.source,
    }),
    held({
      what: 'suppression-nine-db',
      value: readings.repliesNineDbPercent,
      limit: { least: suppressionNineDbLeastPercent.value },
      unit: '%',
      source: suppressionNineDbLeastPercent.source,
    }),
  ];
}

function sensitivity(readings: TransponderReadings, facts: TransponderClassFacts): JudgedPoint {
  const { value, source } = sensitivityDbm[facts.modeS ? 'mode-s' : 'atcrbs'];
  const read = facts.modeS ? readings.mtlModeSDbm : readings.mtlModeADbm;
  const asked = { what: facts.modeS ? 'sensitivity-mode-s' : 'sensitivity', value: read, unit: 'dBm' };
  const limit = around(value.centre, value.within);
  if (readings.testSet === 'bench') return held({ ...asked, limit, source });
  const wide = around(value.centre, value.within + portableSetDb.value);
  const judgedPoint = heldInDoubt({ ...asked, narrow: limit, wide, source });
  return judgedPoint.outcome === 'met' ? judgedPoint : { ...judgedPoint, source: portableSetDb.source };
}

function modeDifference({ mtlModeADbm: a, mtlModeCDbm: c }: TransponderReadings): JudgedPoint {
  return held({
    what: 'mode-difference',
    value: a === null || c === null ? null : Math.abs(a - c),
    limit: { most: modeDifferenceDb.value },
    unit: 'dB',
    source: modeDifferenceDb.source,
  });
}

function modeSOnly(readings: TransponderReadings, day: string): JudgedPoint[] {
  const combined = inForce(combinedAllCall, day).value;
  const wrongAnswers = readings.wrongAddressesAnswered;
  return [
    ...diversity(readings),
    stated({ what: 'own-address', value: readings.ownAddressAnswered, source: appendixF('(f)') }),
    held({
      what: 'wrong-addresses-tried',
      value: readings.wrongAddressesTried,
      limit: { least: wrongAddressesLeast.value },
      unit: 'addresses',
      source: wrongAddressesLeast.source,
    }),
    held({
      what: 'wrong-addresses-answered',
      value: wrongAnswers,
      limit: { most: 0 },
      unit: 'addresses',
      source: appendixF('(f)'),
    }),
    stated({ what: 'altitude-reply', value: readings.altitudeReplyAgrees, source: appendixF('(g)') }),
    stated({ what: 'identity-reply', value: readings.identityReplyAgrees, source: appendixF('(g)') }),
    ...(readings.longFormatsFitted === false
      ? []
      : [stated({ what: 'long-formats', value: readings.longFormatsCorrect, source: appendixF('(g)') })]),
    stated({ what: 'all-call', value: readings.allCallCorrect, source: appendixF('(h)') }),
    ...(combined.value
      ? [stated({ what: 'combined-all-call', value: readings.combinedAllCallCorrect, source: combined.source })]
      : []),
    stated({ what: 'atcrbs-only-all-call', value: readings.atcrbsOnlyAllCallSilent, source: appendixF('(i)') }),
    stated({ what: 'squitter', value: readings.squitterCorrect, source: appendixF('(j)') }),
  ];
}

function diversity(readings: TransponderReadings): JudgedPoint[] {
  if (readings.diversity === false) return [];
  const { value: least, source } = diversityLeastDb;
  const isolation = held({
    what: 'diversity',
    value: readings.diversityIsolationDb,
    limit: { least },
    unit: 'dB',
    source,
  });
  return [isolation];
}

function around(centre: number, within: number): Limit {
  return { least: centre - within, most: centre + within };
}
