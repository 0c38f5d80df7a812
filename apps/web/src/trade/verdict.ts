import type { Verdict } from '@tallywing/rules';
import type { Status } from '../ui/status-words.js';

/** What a verdict shows as. Held, not fitted, not wanted and not judged are told apart from a plain no. */
export function statusOf(verdict: Pick<Verdict, 'ready' | 'standing'>): Status {
  if (verdict.standing !== 'judged') return verdict.standing;
  return verdict.ready;
}

/** The same for a verdict as the API writes it. One that is being judged again is never shown as a yes. */
export function statusOfAnswer(verdict: {
  readonly ready: string;
  readonly standing: string;
  readonly judgingAgain?: boolean;
}): Status {
  if (verdict.judgingAgain) return 'judged-again';
  const code = (verdict.standing === 'JUDGED' ? verdict.ready : verdict.standing).toLowerCase().replace(/_/g, '-');
  return code as Status;
}

/** 'nav1>cdi1' to 'Navigator on indicator': the source, and what shows it. */
export function meansWords(id: string, unitName: (id: string) => string): string {
  return id.split('>').map(unitName).join(' on ');
}
