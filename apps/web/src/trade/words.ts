import { idWords } from '../ui/words.js';

/** The trade's words for the codes of the rule library. A code without an entry is shown as plain words of itself. */

const capabilities: Readonly<Record<string, string>> = {
  fly: 'Fly at all',
  night: 'Fly at night',
  hire: 'Fly for hire or instruction',
  'ifr-aircraft': 'Aircraft fit for IFR',
  'two-way-radio': 'Two-way radio',
  'nav-vor': 'Navigate by VOR',
  'nav-gnss': 'Navigate by GNSS',
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
  return capabilities[code] ?? codeWords(code);
}

/** Initials that stay capitals whatever the code's spelling. */
const capitals = new Map(
  [
    'ELT',
    'VOR',
    'ILS',
    'LOC',
    'GS',
    'GNSS',
    'LNAV',
    'VNAV',
    'LPV',
    'LP',
    'VFR',
    'IFR',
    'VHF',
    'TSO',
    'STC',
    'MEL',
    'UAT',
    'SBAS',
    'RS',
    'ARINC',
    'DME',
  ].map((word) => [word.toLowerCase(), word]),
);

/** 'elt-inspection' to 'ELT inspection'. */
export function codeWords(code: string): string {
  return idWords(code)
    .replace(/\bads b\b/gi, 'ADS-B')
    .split(' ')
    .map((word) => capitals.get(word.toLowerCase()) ?? word)
    .join(' ');
}

const recordKinds: Readonly<Record<string, string>> = {
  'hundred-hour-inspection': '100-hour inspection',
  'progressive-complete': 'Progressive inspection, complete',
  'own-item': 'Own recurring item',
  'ads-b-report': 'ADS-B performance report',
  'release-entry': 'Entry of release',
};

export function recordKindWords(code: string): string {
  return recordKinds[code] ?? codeWords(code);
}

const effects: Readonly<Record<string, string>> = {
  'stops-aircraft': 'Stops the aircraft',
  'stops-operation': 'Stops an operation',
  'stops-release': 'Stops a release',
  record: 'Record',
  advice: 'Advice',
};

export function effectWords(code: string): string {
  return effects[code] ?? codeWords(code);
}

/** What a result or a due item speaks of: names as they are, codes in words. 'QN 52 navigator:approach-lpv' to 'QN 52 navigator, LPV approach'. */
export function subjectWords({ subjectName }: { readonly subjectName: string }): string {
  return subjectName.split(':').map(nameOrCode).join(', ');
}

/** What a rule says of something, by its key: 'vor-check|nav1' to 'VOR check of SR 12'. */
export function resultWords(key: string, names: Readonly<Record<string, string>>): string {
  const [ruleId = '', subject = ''] = key.split('|');
  const rule = recordKindWords(ruleId);
  if (subject === '' || subject === 'aircraft') return rule;
  const subjectName = subject
    .split(':')
    .map((part) => names[part] ?? part)
    .join(':');
  return `${rule} of ${subjectWords({ subjectName })}`;
}

/** 'Transponder test, OT 90 transponder'; what belongs to the whole aircraft, or is its own subject, stands alone. */
export function dueWords(item: {
  readonly what: string;
  readonly subject: string;
  readonly subjectName: string;
}): string {
  const what = nameOrCode(item.what);
  const of = subjectWords(item);
  return item.subject === 'aircraft' || of === what ? what : `${what}, ${of}`;
}

function nameOrCode(text: string): string {
  if (!/^[a-z][a-z0-9-]*$/.test(text)) return text;
  return capabilities[text] ?? recordKindWords(text);
}

/** Beside hours that are left: the reading they are counted from is too old to be relied on. */
export function oldReadingWords(item: { readonly readingEnds: string | null }, now: string): string {
  return item.readingEnds !== null && item.readingEnds <= now ? ', by a reading that is too old' : '';
}
