import type { AltimeterReadings } from '../dossier/readings.js';
import {
  altimeterTestTable,
  appendixE,
  baroScaleTable,
  baroScaleToleranceFt,
  frictionTable,
  hysteresisPointWithinFt,
  scaleErrorTable,
} from '../facts/altimeter.js';
import type { SourceRef } from '../facts/source.js';
import type { JudgedPoint, JudgedReadings } from './judged.js';
import { cannotTell, held, judged, stated } from './judged.js';

/**
 * Altimeter bench test against part 43 appendix E(b). Feet and inHg. Every point of tables I and III up to the tested
 * maximum, the maximum itself, and every point of table IV within the setting range must be there: absent is
 * cannot-tell. Between table points the lower row's tolerance holds; nothing is interpolated (our reading: the appendix
 * has no rule). Tests by a maker's procedure, (b)(2), rest on the tester's statement.
 */
export function judgeAltimeterTest(readings: AltimeterReadings): JudgedReadings {
  const testedTo = held({
    what: 'tested-to',
    value: readings.testedToFt,
    limit: { least: -1000 },
    unit: 'ft',
    source: appendixE('(b)(1)(i), (d)'),
  });
  if (readings.method === 'maker-procedure') {
    const source: SourceRef = { ...appendixE('(b)(2)'), status: 'maker' };
    return judged([testedTo, stated({ what: 'maker-procedure', value: readings.makerProcedurePassed, source })]);
  }
  return judged([
    testedTo,
    ...scaleError(readings),
    hysteresis('hysteresis-half', readings.hysteresisHalf, readings.testedToFt, 0.5),
    hysteresis('hysteresis-two-fifths', readings.hysteresisTwoFifths, readings.testedToFt, 0.4),
    afterEffect(readings),
    ...friction(readings),
    held({
      what: 'case-leak',
      value: size(readings.caseLeakFt),
      limit: { most: altimeterTestTable.value.caseLeakFt },
      unit: 'ft',
      source: altimeterTestTable.source,
    }),
    ...baroScale(readings),
  ]);
}

function scaleError(readings: AltimeterReadings): JudgedPoint[] {
  const read = readings.scaleError.map(({ atFt, indicatedFt }) => ({ atFt, offFt: indicatedFt - atFt }));
  const top = readings.testedToFt;
  return againstRows('scale-error', read, scaleErrorTable.value, scaleErrorTable.source, top, top);
}

function friction(readings: AltimeterReadings): JudgedPoint[] {
  const read = readings.friction.map(({ atFt, changeFt }) => ({ atFt, offFt: changeFt }));
  return againstRows('friction', read, frictionTable.value, frictionTable.source, readings.testedToFt, null);
}

/** Judges what was read, then names the rows up to `topFt`, and the altitude `alsoFt`, at which nothing was read. */
function againstRows(
  what: string,
  read: readonly { readonly atFt: number; readonly offFt: number }[],
  rows: readonly { readonly altitudeFt: number; readonly toleranceFt: number }[],
  source: SourceRef,
  topFt: number | null,
  alsoFt: number | null,
): JudgedPoint[] {
  const limitAt = (atFt: number): { limit: { most: number }; source: SourceRef } | null => {
    const row = rows.filter(({ altitudeFt }) => altitudeFt <= atFt).at(-1);
    if (!row) return null;
    const onRow = row.altitudeFt === atFt;
    return { limit: { most: row.toleranceFt }, source: onRow ? source : { ...source, status: 'reading' } };
  };
  const points = read.map(({ atFt, offFt }) => {
    const found = limitAt(atFt);
    const asked = { what, at: atFt, unit: 'ft' };
    return found
      ? held({ ...asked, ...found, value: Math.abs(offFt) })
      : cannotTell({ ...asked, value: Math.abs(offFt), source });
  });
  const wanted =
    topFt === null ? [] : rows.map(({ altitudeFt }) => altitudeFt).filter((altitudeFt) => altitudeFt <= topFt);
  if (alsoFt !== null && !wanted.includes(alsoFt)) wanted.push(alsoFt);
  const missing = wanted
    .filter((altitudeFt) => !read.some(({ atFt }) => atFt === altitudeFt))
    .map((altitudeFt) => cannotTell({ what, at: altitudeFt, unit: 'ft', source, ...limitAt(altitudeFt) }));
  const all = [...points, ...missing];
  return all.length > 0 ? all : [cannotTell({ what, unit: 'ft', source })];
}

function hysteresis(
  what: string,
  reading: AltimeterReadings['hysteresisHalf'],
  testedToFt: number | null,
  share: 0.5 | 0.4,
): JudgedPoint {
  const { value, source } = altimeterTestTable;
  const limit = { most: share === 0.5 ? value.hysteresisHalfFt : value.hysteresisTwoFifthsFt };
  if (!reading) return cannotTell({ what, unit: 'ft', limit, source });
  const asked = { what, at: reading.atFt, unit: 'ft', limit, source };
  const offFt = Math.abs(reading.descendingFt - reading.ascendingFt);
  const found = held({ ...asked, value: offFt });
  const wrongPoint = testedToFt !== null && Math.abs(reading.atFt - testedToFt * share) > hysteresisPointWithinFt.value;
  return wrongPoint && found.outcome === 'met'
    ? cannotTell({ ...asked, value: offFt, source: hysteresisPointWithinFt.source })
    : found;
}

function afterEffect({ afterEffect: reading }: AltimeterReadings): JudgedPoint {
  const { value, source } = altimeterTestTable;
  return held({
    what: 'after-effect',
    value: reading && Math.abs(reading.afterFt - reading.beforeFt),
    limit: { most: value.afterEffectFt },
    unit: 'ft',
    source,
  });
}

/** Settings between the table's rows have no published figure and are not judged. */
function baroScale(readings: AltimeterReadings): JudgedPoint[] {
  const from = readings.baroFromInHg ?? -Infinity;
  const to = readings.baroToInHg ?? Infinity;
  const limit = { most: baroScaleToleranceFt.value };
  const asked = { what: 'baro-scale', unit: 'ft', limit, source: baroScaleTable.source };
  const points = baroScaleTable.value.flatMap((row): JudgedPoint[] => {
    const read = readings.baroScale.filter(({ settingInHg }) => Math.abs(settingInHg - row.settingInHg) < 0.005);
    const found = read.map(({ differenceFt }) =>
      held({ ...asked, at: row.settingInHg, value: Math.abs(differenceFt - row.differenceFt) }),
    );
    const inRange = row.settingInHg >= from && row.settingInHg <= to;
    return found.length > 0 || !inRange ? found : [cannotTell({ ...asked, at: row.settingInHg })];
  });
  return points.length > 0 ? points : [cannotTell(asked)];
}

function size(value: number | null): number | null {
  return value === null ? null : Math.abs(value);
}
