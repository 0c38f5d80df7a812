import { expect, it } from 'vitest';
import { mayReadFigures } from './readers.js';

const from = (remoteAddress: string, headers: Record<string, string> = {}) =>
  ({ headers, socket: { remoteAddress } }) as unknown as Parameters<typeof mayReadFigures>[0];

it.each([
  ['this computer', from('127.0.0.1'), '', true],
  ['this computer by its other names', from('::ffff:127.0.0.1'), '', true],
  ['another one', from('192.0.2.7'), '', false],
  ['a proxy here that speaks for another', from('127.0.0.1', { 'x-forwarded-for': '192.0.2.7' }), '', false],
  ['another one with the token', from('192.0.2.7', { authorization: 'Bearer right' }), 'right', true],
  ['another one with a wrong token', from('192.0.2.7', { authorization: 'Bearer wrong' }), 'right', false],
  ['this computer with a wrong token', from('127.0.0.1', { authorization: 'Bearer wrong' }), 'right', false],
  ['another one where no token is set', from('192.0.2.7', { authorization: 'Bearer ' }), '', false],
])('figures for %s', (_, request, token, allowed) => {
  expect(mayReadFigures(request, token)).toBe(allowed);
});
