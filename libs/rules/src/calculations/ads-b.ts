import type { AdsBCode } from '../facts/ads-b.js';
import { adsBCodeNames, adsBCodes, adsBLimits } from '../facts/ads-b.js';
import type { JudgedReadings } from './judged.js';
import { held, judged } from './judged.js';

const metresPerNm = 1852;

/** The least code of each kind whose bound lies within what 91.227(c) prints. */
export function leastAdsBCodes(): Readonly<Record<AdsBCode, number>> {
  const { nicBelowNm, nacpBelowNm, nacvBelowMps, silMost, sdaMost } = adsBLimits.value;
  return {
    nic: leastWithin('nic', nicBelowNm * metresPerNm),
    nacp: leastWithin('nacp', nacpBelowNm * metresPerNm),
    nacv: leastWithin('nacv', nacvBelowMps),
    sil: leastWithin('sil', silMost),
    sda: leastWithin('sda', sdaMost),
  };
}

/** The same in words: 'NIC 7, NACp 8, NACv 1, SIL 3 and SDA 2 or more'. */
export function leastAdsBCodesWords(): string {
  const { nic, nacp, nacv, sil, sda } = leastAdsBCodes();
  return `NIC ${nic}, NACp ${nacp}, NACv ${nacv}, SIL ${sil} and SDA ${sda} or more`;
}

/** A code bounds what is sent by "less than" or "at most" as the rule does, so that equal bounds belong together. */
function leastWithin(code: AdsBCode, bound: number): number {
  return Math.min(...adsBCodes[code].value.filter(([, each]) => each <= bound * (1 + 1e-9)).map(([each]) => each));
}

/** The codes of a performance report against 91.227(c). A code that was not read off it is cannot-tell. */
export function judgeAdsBReport(codes: Readonly<Record<AdsBCode, number | null>>): JudgedReadings {
  const least = leastAdsBCodes();
  return judged(
    adsBCodeNames.map((what) =>
      held({ what, value: codes[what], limit: { least: least[what] }, unit: 'code', source: adsBCodes[what].source }),
    ),
  );
}
