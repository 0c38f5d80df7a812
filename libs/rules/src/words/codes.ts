import type { Capability } from '../verdict/capability.js';

/** The trade's words for the codes of this library. A code without an entry is shown as plain words of itself. */

const capabilities: Readonly<Record<Capability, string>> = {
  fly: 'Fly at all',
  night: 'Fly at night',
  hire: 'Fly for hire or instruction',
  'ifr-aircraft': 'Aircraft fit for IFR',
  'two-way-radio': 'Two-way radio',
  'nav-vor': 'VOR navigation',
  'nav-gnss': 'GNSS navigation',
  'altitude-reporting': 'Report altitude',
  'ads-b-out': 'ADS-B Out',
  'approach-vor': 'VOR approach',
  'approach-loc': 'Localizer approach',
  'approach-ils': 'ILS approach',
  'approach-lnav': 'LNAV approach',
  'approach-lp': 'LP approach',
  'approach-lnav-vnav': 'LNAV/VNAV approach',
  'approach-lpv': 'LPV approach',
};

export function capabilityWords(code: string): string {
  return isCapability(code) ? capabilities[code] : codeWords(code);
}

export function isCapability(code: string): code is Capability {
  return Object.hasOwn(capabilities, code);
}

/** Initials that stay capitals whatever the code's spelling. */
const initials = 'ELT VOR ILS LOC GS GNSS LNAV VNAV LPV LP VFR IFR VHF TSO STC MEL UAT SBAS RS ARINC DME RNAV COM';
const capitals = new Map(initials.split(' ').map((word) => [word.toLowerCase(), word]));

const irregular: Readonly<Record<string, string>> = {
  'hundred-hour-inspection': '100-hour inspection',
  'progressive-complete': 'Progressive inspection, complete',
  'own-item': 'Own recurring item',
  'ads-b-report': 'ADS-B performance report',
  'release-entry': 'Entry of release',
  'direction-gyro': 'Directional gyro',
  'pitch-and-bank': 'Pitch and bank indicator',
  'rate-of-turn': 'Rate-of-turn indicator',
  'slip-skid': 'Slip-skid indicator',
  'third-attitude': 'Third attitude indicator',
};

/** 'elt-inspection' to 'ELT inspection', 'gearPosition' to 'Gear position'. */
export function codeWords(code: string): string {
  if (Object.hasOwn(irregular, code)) return irregular[code] ?? code;
  return idWords(code.replace(/([a-z])([A-Z])/g, '$1-$2'))
    .replace(/\bads b\b/gi, 'ADS-B')
    .split(' ')
    .map((word) => capitals.get(word.toLowerCase()) ?? word)
    .join(' ');
}

/** 'altitude-reporting' or 'STOPS_AIRCRAFT' to 'Altitude reporting': for ids that nothing closer names. */
export function idWords(id: string): string {
  return upperFirst(id.replace(/[-_]+/g, ' ').trim().toLowerCase());
}

export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Within a sentence: 'ELT battery' keeps its capitals, 'Annual inspection' does not. */
export function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
