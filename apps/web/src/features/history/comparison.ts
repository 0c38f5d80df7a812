import { capabilityWords, codeWords } from '@tallywing/rules';
import { subjectWords } from '../../trade/words.js';
import { answerWords } from './entry-view.js';
import type { ShownAnswer } from './query.js';

/** One answer that today's rules give otherwise. */
export interface DifferingLine {
  readonly key: string;
  readonly kind: 'flight' | 'operation' | 'capability' | 'finding';
  readonly what: string;
  readonly was: string;
  readonly is: string;
}

type Finding = ShownAnswer['open'][number];

/** Every answer that differs between what was shown and what today's rules say of the same record at the same minute. */
export function differingLines(shown: ShownAnswer): DifferingLine[] {
  const line = (kind: DifferingLine['kind'], what: string, was: string, is: string): DifferingLine => ({
    key: `${kind} ${what} ${was} ${is}`,
    kind,
    what,
    was,
    is,
  });
  const moved = ({ was, is }: { readonly was: string | null; readonly is: string }) =>
    [was === null ? 'not judged' : answerWords(was), answerWords(is)] as const;
  return [
    ...shown.flightsDiffer.map((each) => line('flight', each.flight, ...moved(each))),
    ...(shown.operationsDiffer ?? []).map((each) => line('operation', operationWords(each.flight), ...moved(each))),
    ...(shown.capabilitiesDiffer ?? []).map((each) =>
      line('capability', capabilityWords(each.capability), ...moved(each)),
    ),
    ...shown.closed.map((each) => line('finding', findingName(each), findingText(each), 'no finding')),
    ...shown.opened.map((each) => line('finding', findingName(each), 'no finding', findingText(each))),
    ...shown.changed.map(({ was, is }) => line('finding', findingName(is), findingText(was), findingText(is))),
  ];
}

/** How today's rules and those of then stand to each other, in a sentence. */
export function versionsWords(shown: ShownAnswer): string {
  const { rules, rulesNow, zones, zonesNow } = shown;
  const zoneWords =
    zones === zonesNow ? '' : ` The data of time zones is another one too: ${zones} then, ${zonesNow} now.`;
  return rules === rulesNow
    ? `The rules are still those of then, version ${rules}.${zoneWords}`
    : `Judged then by version ${rules} of the rules; today's version is ${rulesNow}.${zoneWords}`;
}

/** What was not kept and can therefore not be compared. */
export function notKeptWords({ operationsDiffer, capabilitiesDiffer }: ShownAnswer): string | null {
  return operationsDiffer === null || capabilitiesDiffer === null
    ? 'Operations and capabilities were not kept with what was shown then; flights and findings were.'
    : null;
}

export function findingText({ outcome, text }: Pick<Finding, 'outcome' | 'text'>): string {
  return outcome === 'CANNOT_TELL' ? `cannot tell: ${text}` : text;
}

export function findingName(finding: Pick<Finding, 'subject' | 'subjectName' | 'ruleId'>): string {
  const subject = subjectWords(finding);
  return finding.subject === 'aircraft' ? 'The aircraft' : subject;
}

const operations: Readonly<Record<string, string>> = {
  'vfr-day': 'VFR by day',
  'vfr-night': 'VFR by night',
  ifr: 'IFR',
};

function operationWords(name: string): string {
  return operations[name] ?? (name.startsWith('approach-') ? capabilityWords(name) : codeWords(name));
}
