import { isZone } from '@tallywing/rules';
import type { FlightConditions } from '@tallywing/rules';
import { badInput } from '../common/errors.js';

/** @throws AppError BAD_INPUT */
export function checkedName(given: string, field: string, taken: readonly string[]): string {
  const name = checkedText(given, field, 'the name that people know');
  if (taken.some((each) => each.toLowerCase() === name.toLowerCase()))
    throw badInput(field, `There is one called ${name} already.`, 'Choose another name, or change that one.');
  return name;
}

/** @throws AppError BAD_INPUT */
export function checkedText(given: string, field: string, what: string): string {
  const text = given.trim();
  if (text === '' || text.length > 200) throw badInput(field, 'This has 1 to 200 characters.', `Write ${what}.`);
  return text;
}

/** @throws AppError BAD_INPUT */
export function checkedZone(zone: string, field: string): string {
  if (isZone(zone)) return zone;
  throw badInput(
    field,
    `${zone === '' ? 'Nothing' : zone} is not a time zone that the rules know.`,
    'Choose one from the list, such as America/Chicago.',
  );
}

const HIGHEST_FT = 60_000;
const WIDEST_NM = 500;

/** @throws AppError BAD_INPUT naming the condition */
export function checkedConditions(given: FlightConditions, field: string): FlightConditions {
  const { topFt, localTrainingNm = null, approaches, rules, errand = null } = given;
  if (topFt < 0 || topFt > HIGHEST_FT)
    throw badInput(`${field}.topFt`, `The altitude is 0 to ${HIGHEST_FT} ft.`, 'Write it in feet.');
  if (localTrainingNm !== null && (localTrainingNm < 1 || localTrainingNm > WIDEST_NM))
    throw badInput(`${field}.localTrainingNm`, `The radius is 1 to ${WIDEST_NM} NM.`, 'Write it, or leave it empty.');
  if (approaches.length > 0 && rules === 'vfr')
    throw badInput(
      `${field}.approaches`,
      'An instrument approach is flown under IFR.',
      'Choose IFR, or want no approach.',
    );
  return {
    rules,
    light: given.light,
    purpose: given.purpose,
    airspace: [...new Set(given.airspace)],
    topFt,
    localTrainingNm,
    overWaterBeyondGlide: given.overWaterBeyondGlide,
    crewOnly: given.crewOnly,
    errand,
    region: given.region?.trim() ? checkedText(given.region, `${field}.region`, 'the name of the region') : null,
    approaches: [...new Set(approaches)],
  };
}

/** An id made from the name, for people who meet it in a file: `North Flyers` is `north-flyers`. */
export function idFrom(name: string, taken: readonly string[]): string {
  const plain =
    name
      .normalize('NFD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'item';
  for (let count = 1; ; count += 1) {
    const id = count === 1 ? plain : `${plain}-${count}`;
    if (!taken.includes(id)) return id;
  }
}
