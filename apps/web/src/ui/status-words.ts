/** Every standing a verdict can show on a screen. */
export type Status =
  | 'yes'
  | 'no'
  | 'cannot-tell'
  | 'judged-again'
  | 'not-fitted'
  | 'not-wanted'
  | 'not-judged'
  | 'held'
  | 'in-work'
  | 'say-so';

export const statusWords: Readonly<Record<Status, string>> = {
  yes: 'Yes',
  no: 'No',
  'cannot-tell': 'Cannot tell',
  'judged-again': 'Being judged again',
  'not-fitted': 'Not fitted',
  'not-wanted': 'Not wanted',
  'not-judged': 'Not judged',
  held: 'Held',
  'in-work': 'In work',
  'say-so': 'Wants a say-so',
};
