import { codeWords, lowerFirst, factWords } from '@tallywing/rules';
import type { Job } from '@tallywing/rules';
import { listWords } from '../ui/words.js';
import type { Names } from '@tallywing/rules';
import { subjectWords } from './words.js';

/** What each job that is no entry is called. */
const jobs: Partial<Record<Job, string>> = {
  'altitude-suite': 'All altitude and transponder tests in one visit',
  'lift-hold': 'Lift the hold',
  'load-database': 'Load the data of',
  'read-meters': 'Read the meters',
  'join-ports': 'Join the free ports of',
  'part-ports': 'Part the joint',
  'fit-antenna': 'Fit an antenna for',
  'fit-placard': 'Fit the placard for',
  'file-supplement': 'Put the flight manual supplement in order for',
  'revise-weight-record': 'Revise the weight record and equipment list',
  weigh: 'Weigh the aircraft, and revise the record and equipment list',
  'replace-part': 'Replace the life-limited part',
  'approve-installation': 'Have the installation approved for all it can do:',
  'adopt-as-found': 'Accept as found',
  'deactivate-unit': 'Deactivate and placard',
  'reactivate-unit': 'Reactivate',
  'repair-defect': 'Repair and close the defect',
  'defer-defect': 'Defer the defect',
  'directive-compliance': 'Comply with directive',
};

interface Step {
  readonly job: string;
  readonly subjects: readonly string[];
  readonly change: string | null;
  readonly facts: readonly string[];
}

/** One step as a line. A fitting names the type, and what it takes the place of. */
export function stepWords({ job, subjects, change, facts }: Step, names: Names): string {
  if (change === null)
    return `Find out and record: ${facts.map((fact) => lowerFirst(factWords(fact, names))).join('; ')}`;
  const called = subjects.map((subjectName) => subjectWords({ subjectName }).replace(/^New /, 'the new '));
  if (/^(fit|replace)-/.test(job) && change === 'unit.install') {
    const [type = '', old] = called;
    return old === undefined ? `Fit ${type}` : `Fit ${type} in place of ${old}`;
  }
  const verb = jobs[job as Job];
  if (verb !== undefined) return `${verb} ${called.slice(0, 1).map(lowerFirstOfWords).join('')}`.trim();
  return called.length === 0 ? codeWords(job) : `${codeWords(job)} of ${listWords(called)}`;
}

/** A job by itself, without what it is done to. */
export function jobWords(job: string): string {
  const verb = jobs[job as Job];
  return verb === undefined ? codeWords(job) : verb.replace(/( of| for|:)$/, '');
}

/** 'Kr 120 (80 to 160)'. */
export function moneyWords(
  { low, typical, high }: { readonly low: number; readonly typical: number; readonly high: number },
  currency: string,
): string {
  const round = (amount: number) => Math.round(amount).toLocaleString('en');
  return `${currency} ${round(typical)} (${round(low)} to ${round(high)})`;
}

/** Names keep their capitals. */
function lowerFirstOfWords(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? lowerFirst(name) : name;
}

const assumptions: Readonly<Record<string, string>> = {
  'passes-and-is-signed': 'each test passes and a person who may signs it',
  'turns-out-well': 'the missing facts turn out well',
  'data-and-parts-at-hand': 'approved data, parts and room are there',
  'can-be-repaired': 'the defect can be repaired',
  'may-be-deferred': 'the item may be deferred because nothing requires it',
  'not-due-again': 'nothing falls due again before the flight',
  'accepted-as-found': 'a named person accepts what is there',
  'this-flight-only': 'the verification is made for this flight and its procedures',
};

export function assumptionWords(code: string): string {
  return assumptions[code] ?? lowerFirst(codeWords(code));
}

/** 'about 1.5 h (0.8 to 2)'. */
export function spanWords({
  low,
  typical,
  high,
}: {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}): string {
  return `about ${typical} h (${low} to ${high})`;
}
