import { describe, expect, it } from 'vitest';
import { AppError } from '../common/errors.js';
import { authorise, permissions, roles } from './access.js';
import type { Actor } from './access.js';
import { hashPassword, passwordMatches } from './passwords.js';

const actor = (role: Actor['role']): Actor => ({ organisationId: 'o', memberId: 'm', name: 'n', role });

describe('access', () => {
  it('denies whatever is not listed', () => {
    expect(() => authorise(null, 'fleet.read')).toThrow(expect.objectContaining({ problem: { code: 'SIGNED_OUT' } }));
    expect(() => authorise(actor('dispatcher'), 'aircraft.record')).toThrow(AppError);
    expect(() => authorise(actor('manager'), 'no.such.thing' as never)).toThrow(AppError);
    expect(() => authorise(actor('nobody' as never), 'fleet.read')).toThrow(AppError);
    expect(() => authorise(actor('technician'), 'aircraft.record')).not.toThrow();
  });
  it('lets an auditor and a dispatcher change nothing', () => {
    for (const role of ['auditor', 'dispatcher'] as const) {
      expect(permissions(actor(role)).filter((action) => /\.(write|record|use|load)/.test(action))).toEqual([]);
    }
    expect(roles.every((role) => permissions(actor(role)).includes('fleet.read'))).toBe(true);
  });
});

describe('passwords', () => {
  it('match only their own hash, which differs each time', async () => {
    const [one, two] = await Promise.all([hashPassword('correct horse'), hashPassword('correct horse')]);
    expect(one).toMatch(/^\$argon2id\$/);
    expect(one).not.toBe(two);
    expect(await passwordMatches(one, 'correct horse')).toBe(true);
    expect(await passwordMatches(one, 'Correct horse')).toBe(false);
    expect(await passwordMatches(null, 'nobody has this one')).toBe(false);
    expect(await passwordMatches('not a hash', 'x')).toBe(false);
  });
});
