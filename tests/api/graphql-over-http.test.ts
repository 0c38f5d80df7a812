import { serverAudits } from 'graphql-http';
import { describe, expect, it } from 'vitest';
import { shared } from './shared.js';

/** The audit of the GraphQL over HTTP working group's reference package, against the running server. */
const audits = serverAudits({ url: () => `${shared.url}/graphql`, fetchFn: fetch });

const binding = audits.filter(({ name }) => !name.startsWith('MAY'));

describe('GraphQL over HTTP', () => {
  it('is audited in full', () => {
    expect(audits.length).toBeGreaterThan(50);
    expect(binding.every(({ name }) => /^(MUST|SHOULD)/.test(name))).toBe(true);
  });

  it.each(binding.map((audit) => [`${audit.id} ${audit.name}`, audit] as const))('%s', async (_, audit) => {
    const { status, ...more } = await audit.fn();
    expect({ status, reason: 'reason' in more ? more.reason : '' }).toEqual({ status: 'ok', reason: '' });
  });

  it('says which of the free choices it makes', async () => {
    const free = audits.filter(({ name }) => name.startsWith('MAY'));
    const made = await Promise.all(free.map(async (audit) => `${(await audit.fn()).status}: ${audit.name}`));
    expect(made.sort()).toMatchInlineSnapshot(`
      [
        "notice: MAY accept application/x-www-form-urlencoded formatted GET requests",
        "notice: MAY allow URL-encoded JSON string {variables} parameter in GETs when accepting application/graphql-response+json",
        "notice: MAY allow URL-encoded JSON string {variables} parameter in GETs when accepting application/json",
        "ok: MAY NOT allow executing mutations on GET requests",
        "ok: MAY use 2xx, 4xx, or 5xx status codes on JSON parsing failure when accepting application/json",
        "ok: MAY use 400 status code if parameters are invalid",
        "ok: MAY use 400 status code on array {extensions} parameter",
        "ok: MAY use 400 status code on array {operationName} parameter",
        "ok: MAY use 400 status code on array {query} parameter",
        "ok: MAY use 400 status code on array {variables} parameter",
        "ok: MAY use 400 status code on boolean {extensions} parameter",
        "ok: MAY use 400 status code on boolean {operationName} parameter",
        "ok: MAY use 400 status code on boolean {query} parameter",
        "ok: MAY use 400 status code on boolean {variables} parameter",
        "ok: MAY use 400 status code on missing {query} parameter",
        "ok: MAY use 400 status code on number {extensions} parameter",
        "ok: MAY use 400 status code on number {operationName} parameter",
        "ok: MAY use 400 status code on number {query} parameter",
        "ok: MAY use 400 status code on number {variables} parameter",
        "ok: MAY use 400 status code on object {operationName} parameter",
        "ok: MAY use 400 status code on object {query} parameter",
        "ok: MAY use 400 status code on string {extensions} parameter",
        "ok: MAY use 400 status code on string {variables} parameter",
        "ok: MAY use 400 status code when request body is missing on POST",
        "ok: MAY use 4xx or 5xx status codes if parameters are invalid",
      ]
    `);
  });
});
