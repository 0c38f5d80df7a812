import type { Aircraft } from '../../dossier/aircraft.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, flight, implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Purpose } from '../../verdict/conditions.js';
import type { Draft } from '../../verdict/result.js';
import { cfr, reading } from '../cite.js';
import { findOut } from '../gaps.js';
import { forHire } from '../purposes.js';
import { defineRule } from '../rule.js';

type Certificate = NonNullable<Aircraft['certificate']>;
const notNamed = reading('14 CFR', '91.313 to 91.327 limit the other certificates, none limits a standard one');
const lease = cfr('91.319(f)');

/**
 * Carriage of persons or property for hire is forbidden to these. Experimental, limited and primary ones in operations that need a
 * certificate under part 119 or are listed in 119.1(e), which is all carriage for hire; light-sport and provisional ones by what alone they may do.
 */
const carriageForbidden: Readonly<Record<Exclude<Certificate, 'standard'>, SourceRef>> = {
  experimental: cfr('91.319(a)(2)'),
  'light-sport': cfr('91.327(a)'),
  restricted: cfr('91.313(c)'),
  limited: cfr('91.315'),
  primary: cfr('91.325(a)'),
  provisional: cfr('91.317(c), (d)'),
};

/**
 * By certificate and purpose. For a standard certificate the recorded limitations are not asked: no text makes hire hang on them.
 * Inspections that hire calls for (91.409(b), 91.319(g), 91.327(c)) are judged apart.
 */
export const hirePermitted = defineRule(
  {
    id: 'hire-permitted',
    topic: 'authority',
    asks: 'The certificate and the operating limitations allow this use for hire.',
    binds:
      'Flights for hire, instruction in a provided aircraft among them; and the renting out of experimental aircraft.',
    sources: [cfr('91.319(e), (g)'), cfr('91.327(c)'), lease, ...Object.values(carriageForbidden), notNamed],
    messages: {
      allowed: 'With its {certificate} certificate the aircraft may be used so.',
      forbidden: 'With its {certificate} certificate the aircraft may not be used so.',
      unclear: 'Whether this use is allowed cannot be told; certificate: {certificate}.',
      'not-for-hire': 'The flight is not for hire.',
    },
    establishes: ['hire'],
  },
  (facts) => {
    const { certificate } = facts.dossier.configuration.aircraft;
    const own = certificate === 'experimental' || certificate === null ? [rented(facts)] : [];
    const hire = implies(flight('for-hire', { purpose: forHire }), judge(facts, certificate));
    return [draftOf(facts, 'aircraft', hire, 'hire'), ...own];
  },
);

function judge(facts: Facts, certificate: Certificate | null): Clause {
  if (certificate === null) return unknown('certificate-allows', ['configuration.aircraft.certificate']);
  if (certificate === 'standard') return met('certificate-allows', { source: notNamed });
  const lightSport = certificate === 'light-sport';
  const limited = lightSport ? cfr('91.327(c)') : cfr(certificate === 'experimental' ? '91.319(e), (g)' : '91.9');
  const stated = byLimitations(facts, limited);
  const inDispute: readonly Purpose[] = lightSport
    ? ['aerial-work']
    : ['training-provided', 'tow-for-hire', 'aerial-work'];
  return allOf(
    'certificate-allows',
    [
      implies(
        flight('carriage-for-hire', { purpose: ['carriage-for-hire'] }),
        notMet('carriage-allowed', { source: carriageForbidden[certificate] }),
      ),
      implies(flight('by-limitations', { purpose: inDispute }), stated),
      ...(lightSport
        ? [
            implies(
              flight('towing-or-instruction', { purpose: ['training-provided', 'tow-for-hire'] }),
              met('towing-or-instruction-allowed', { source: limited }),
            ),
          ]
        : []),
    ],
    'cannot-tell',
  );
}

function rented(facts: Facts): Draft {
  const experimental = fact(
    facts.dossier.configuration.aircraft.certificate === null ? null : true,
    'experimental',
    'configuration.aircraft.certificate',
  );
  const asked = allOf(
    'experimental-and-rented',
    [experimental, flight('rented', { purpose: ['rental'] })],
    'cannot-tell',
  );
  return draftOf(facts, 'rental', implies(asked, byLimitations(facts, lease)), 'fly');
}

function byLimitations(facts: Facts, source: SourceRef): Clause {
  const { authority } = facts.dossier.configuration;
  return fact(authority?.hire, 'limitations-allow-hire', 'configuration.authority.hire', { source });
}

function draftOf(facts: Facts, subject: string, clause: Clause, capability: 'hire' | 'fly'): Draft {
  return {
    subject,
    clause,
    messages: { met: 'allowed', 'not-met': 'forbidden', 'cannot-tell': 'unclear', 'not-applicable': 'not-for-hire' },
    data: { certificate: facts.dossier.configuration.aircraft.certificate },
    effects: [{ stops: 'capability', capability }],
    remedies: findOut(clause, 'authority.set', 'aircraft'),
  };
}
