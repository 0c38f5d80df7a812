import { describe, expect, inject, it } from 'vitest';
import { as } from './people.js';

const post = (
  body: string,
  headers: Record<string, string> = {
    'content-type': 'application/json',
    accept: 'application/graphql-response+json',
  },
): Promise<Response> => fetch(`${inject('apiUrl')}/graphql`, { method: 'POST', headers, body });

describe('requests that cannot be read', () => {
  const cases: [string, string, string][] = [
    ['an unfinished query', '{"query":"{ viewer { id "}', 'query'],
    ['a field that does not exist', '{"query":"{ nothing }"}', 'query'],
    ['no query', '{}', 'query'],
    ['text that is not JSON', '{"query":', 'body'],
    [
      'a variable of the wrong kind',
      '{"query":"query($first: Int){ readyBoard(first: $first) { totalCount } }","variables":{"first":"many"}}',
      'first',
    ],
    ['a missing variable', '{"query":"query($id: ID!){ aircraft(id: $id) { id } }"}', 'id'],
    [
      'an unknown operation',
      '{"query":"query A { viewer { id } } query B { viewer { id } }","operationName":"C"}',
      'operationName',
    ],
  ];
  it.each(cases)('%s', async (_, body, field) => {
    const response = await post(body);
    expect(response.status).toBe(400);
    const { errors } = (await response.json()) as {
      errors: { message: string; extensions: Record<string, unknown> }[];
    };
    expect(errors[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', field });
    expect(errors[0]?.extensions['wayOut']).toMatch(/\w{3}/);
    expect(JSON.stringify(errors)).not.toMatch(/node_modules|stack|GRAPHQL_/);
  });

  it('a form sent by a foreign page', async () => {
    const response = await post('query=%7Bviewer%7Bid%7D%7D', { 'content-type': 'application/x-www-form-urlencoded' });
    expect(response.status).toBe(400);
  });
});

describe('requests that ask too much', () => {
  it('a body beyond the limit', async () => {
    const response = await post(
      JSON.stringify({ query: '{ viewer { id } }', variables: { padding: 'x'.repeat(1_100_000) } }),
    );
    expect(response.status).toBe(413);
    expect(await response.json()).toMatchObject({ errors: [{ extensions: { code: 'TOO_LARGE' } }] });
  });

  it('one list under many names', async () => {
    const client = await as('manager@one.example');
    const many = (times: number): string =>
      `{ ${Array.from({ length: times }, (_, index) => `b${index}: readyBoard(first: 1) { totalCount }`).join(' ')} }`;
    expect((await client.ask(many(12))).errors).toBeUndefined();
    expect(await client.ask(many(13))).toMatchObject({ status: 400, errors: [{ extensions: { code: 'BAD_INPUT' } }] });
  });

  it('fragments that multiply', async () => {
    const client = await as('manager@one.example');
    const fragments = Array.from(
      { length: 12 },
      (_, level) =>
        `fragment F${level} on Viewer { ${level === 11 ? 'id name email' : `...F${level + 1} ...F${level + 1}`} }`,
    );
    const began = performance.now();
    const answer = await client.ask(`{ viewer { ...F0 } } ${fragments.join(' ')}`);
    expect(answer).toMatchObject({ status: 400 });
    expect(performance.now() - began).toBeLessThan(2000);
  });
});

describe('beside GraphQL', () => {
  it('is live and ready', async () => {
    expect(await (await fetch(`${inject('apiUrl')}/health/live`)).json()).toEqual({ status: 'live' });
    expect(await (await fetch(`${inject('apiUrl')}/health/ready`)).json()).toEqual({ status: 'ready' });
  });

  it('counts requests', async () => {
    const text = await (await fetch(`${inject('apiUrl')}/metrics`)).text();
    expect(text).toMatch(/tallywing_http_request_seconds_count\{method="POST",route="graphql",status="200"\} [1-9]/);
    expect(text).toMatch(/tallywing_sign_ins_total\{outcome="succeeded"\} [1-9]/);
  });

  it('sends headers that keep foreign scripts out', async () => {
    const { headers } = await fetch(`${inject('apiUrl')}/health/live`);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy.split(';').find((each) => each.startsWith('script-src'))).not.toMatch(/unsafe/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('x-powered-by')).toBeNull();
  });

  it('answers an address that does not exist in its own form', async () => {
    const response = await fetch(`${inject('apiUrl')}/documents/none`);
    expect(response.status).toBe(404);
    expect(await response.json()).toMatchObject({ errors: [{ extensions: { code: 'NOT_FOUND' } }] });
  });
});
