import { capabilityWords, codeWords, isCapability } from '@tallywing/rules';

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
  const rule = codeWords(ruleId);
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
  return isCapability(text) ? capabilityWords(text) : codeWords(text);
}

/** Beside hours that are left: the reading they are counted from is too old to be relied on. */
export function oldReadingWords(item: { readonly readingEnds: string | null }, now: string): string {
  return item.readingEnds !== null && item.readingEnds <= now ? ', by a reading that is too old' : '';
}
