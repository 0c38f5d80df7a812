import { getIntrospectionQuery } from 'graphql';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { as } from './people.js';
import { Server } from './server.js';
import { shared } from './shared.js';

const post = (
  body: string,
  headers: Record<string, string> = {
    'content-type': 'application/json',
    accept: 'application/graphql-response+json',
  },
): Promise<Response> => fetch(`${shared.url}/graphql`, { method: 'POST', headers, body });

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
  const MEGABYTE = 1_048_576;
  const ofSize = (bytes: number): string => {
    const empty = JSON.stringify({ query: '{ viewer { id } }', variables: { padding: '' } });
    return empty.replace('""', `"${'x'.repeat(bytes - empty.length)}"`);
  };
  it('a body beyond the limit, and not one at it', async () => {
    expect((await post(ofSize(MEGABYTE))).status).toBe(200);
    const response = await post(ofSize(MEGABYTE + 1));
    expect(response.status).toBe(413);
    expect(await response.json()).toMatchObject({
      errors: [{ extensions: { code: 'TOO_LARGE', wayOut: 'Send less at once.' } }],
    });
  });

  /** Each just at its limit, which is answered, and just beyond, which is refused with what to do. */
  const names = (times: number, field: string): string =>
    Array.from({ length: times }, (_, index) => `n${index}: ${field}`).join(' ');
  const operations: [string, string, string, RegExp][] = [
    [
      'one list under many names',
      `{ ${names(12, 'readyBoard(first: 1) { totalCount }')} }`,
      `{ ${names(13, 'readyBoard(first: 1) { totalCount }')} }`,
      /asks for readyBoard more than 12 times/,
    ],
    [
      'other names throughout',
      `{ viewer { ${names(60, 'id')} } }`,
      `{ viewer { ${names(61, 'id')} } }`,
      /gives more than 60 fields another name/,
    ],
    [
      'very many fields',
      `{ viewer { ${'...F '.repeat(29)} ${'id '.repeat(49)} } } fragment F on Viewer { ${'id '.repeat(50)} }`,
      `{ viewer { ${'...F '.repeat(29)} ${'id '.repeat(50)} } } fragment F on Viewer { ${'id '.repeat(50)} }`,
      /more than 1500 fields/,
    ],
    [
      'many levels',
      `{ __type(name: "Query") { ${'ofType { '.repeat(14)} name ${'} '.repeat(14)} } }`,
      `{ __type(name: "Query") { ${'ofType { '.repeat(15)} name ${'} '.repeat(15)} } }`,
      /nested more than 16 levels/,
    ],
    [
      // 1 for each list, and for each of its rows the edge, the node and what is asked of it.
      'an answer that would be very long',
      `{ findings(first: 500) { edges { node { ${'id '.repeat(237)} } } } }`,
      `{ findings(first: 500) { edges { node { ${'id '.repeat(238)} } } } }`,
      /could hold more than 120000 fields/,
    ],
    [
      'the dearest search many times over',
      `{ aircraft(id: "none") { ${names(29, 'wayBack(profile: "x") { complete }')} } }`,
      `{ aircraft(id: "none") { ${names(30, 'wayBack(profile: "x") { complete }')} } }`,
      /could hold more than 120000 fields/,
    ],
    [
      'very many words',
      `{ findings(first: 1, filter: { effect: [${'RECORD '.repeat(9975)}] }) { totalCount } }`,
      `{ findings(first: 1, filter: { effect: [${'RECORD '.repeat(9985)}] }) { totalCount } }`,
      /more that 10000 tokens/,
    ],
  ];
  it.each(operations)('%s', async (_, within, beyond, reason) => {
    const client = await as('manager@one.example');
    expect((await client.ask(within)).errors).toBeUndefined();
    const answer = await client.ask(beyond);
    expect(answer).toMatchObject({ status: 400, errors: [{ extensions: { code: 'BAD_INPUT', field: 'query' } }] });
    expect(answer.errors?.[0]?.message).toMatch(reason);
    expect(answer.errors?.[0]?.extensions.wayOut).toMatch(/^(Ask for|Mend the query)/);
    expect(answer.data).toBeUndefined();
  });

  it('several operations in one body', async () => {
    const response = await post(JSON.stringify([{ query: '{ viewer { id } }' }, { query: '{ viewer { id } }' }]));
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ errors: [{ extensions: { code: 'BAD_INPUT' } }] });
  });

  it('leaves room for reading the whole schema, signed in or not', async () => {
    const { data, errors } = await (await as(null)).ask(getIntrospectionQuery());
    expect(errors).toBeUndefined();
    expect(data.__schema.types.length).toBeGreaterThan(100);
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

describe('requests that come too fast', () => {
  let server: Server;
  beforeAll(async () => {
    server = await Server.start({ REQUESTS_PER_MINUTE: '30' });
  });
  afterAll(() => server.remove());

  const ask = (): Promise<Response> =>
    fetch(`${server.url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{"query":"{ viewer { id } }"}',
    });

  it('are told how long to wait, and are then answered again', async () => {
    const answers: Response[] = [];
    for (let each = 0; each < 34; each += 1) answers.push(await ask());
    expect(answers.slice(0, 30).map(({ status }) => status)).toEqual(Array<number>(30).fill(200));
    const refused = answers.at(-1);
    expect(refused?.status).toBe(429);
    const wait = Number(refused?.headers.get('retry-after'));
    expect(wait).toBeGreaterThan(0);
    expect(await refused?.json()).toMatchObject({
      errors: [
        { extensions: { code: 'TOO_MANY', retryAfterSeconds: wait, wayOut: `Wait ${wait} seconds and try again.` } },
      ],
    });
    // What watches over the application is never kept out by it.
    expect((await fetch(`${server.url}/health/live`)).status).toBe(200);
    await new Promise((done) => setTimeout(done, wait * 1000));
    expect((await ask()).status).toBe(200);
  });
});

describe('answers on a slow network', () => {
  const whole = JSON.stringify({ query: getIntrospectionQuery() });
  const sent = async (encoding: string) => {
    const response = await post(whole, { 'content-type': 'application/json', 'accept-encoding': encoding });
    const { data } = (await response.json()) as { data: unknown };
    return { packed: response.headers.get('content-encoding'), vary: response.headers.get('vary'), data };
  };

  it('go out packed to whoever can unpack them, and say the same', async () => {
    const [packed, plain] = [await sent('gzip'), await sent('identity')];
    expect([packed.packed, plain.packed]).toEqual(['gzip', null]);
    for (const { vary } of [packed, plain]) expect(vary?.toLowerCase()).toContain('accept-encoding');
    expect(packed.data).toEqual(plain.data);
  });
});

describe('beside GraphQL', () => {
  it('is live and ready', async () => {
    expect(await (await fetch(`${shared.url}/health/live`)).json()).toEqual({ status: 'live' });
    expect(await (await fetch(`${shared.url}/health/ready`)).json()).toMatchObject({ status: 'ready' });
  });

  it('counts requests', async () => {
    const text = await (await fetch(`${shared.url}/metrics`)).text();
    expect(text).toMatch(/tallywing_http_request_seconds_count\{method="POST",route="graphql",status="200"\} [1-9]/);
    expect(text).toMatch(/tallywing_sign_ins_total\{outcome="succeeded"\} [1-9]/);
  });

  it.each(['/health/live', '/', '/documents/none', '/assets/none.js'])(
    'sends headers that keep foreign scripts out at %s',
    async (path) => {
      const { headers } = await fetch(shared.url + path, { headers: { accept: 'text/html' } });
      const policy = Object.fromEntries(
        (headers.get('content-security-policy') ?? '').split(';').map((each) => {
          const [name = '', ...values] = each.split(' ');
          return [name, values.join(' ')];
        }),
      );
      expect(policy).toEqual({
        'default-src': "'self'",
        'script-src': "'self'",
        'style-src': "'self'",
        'img-src': "'self' data:",
        'connect-src': "'self'",
        'object-src': "'none'",
        'base-uri': "'none'",
        'form-action': "'self'",
        'frame-ancestors': "'none'",
      });
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('same-origin');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(headers.get('permissions-policy')).toContain('camera=()');
      expect(headers.get('x-powered-by')).toBeNull();
      expect(headers.get('server')).toBeNull();
    },
  );

  it('lets no browser keep an answer', async () => {
    const answers = await Promise.all([
      post('{"query":"{ viewer { id } }"}'),
      post('{'),
      fetch(`${shared.url}/imports/none`),
    ]);
    expect(answers.map(({ headers }) => headers.get('cache-control'))).toEqual(Array<string>(3).fill('no-store'));
  });

  it('answers an address that does not exist in its own form', async () => {
    const response = await fetch(`${shared.url}/documents/none`);
    expect(response.status).toBe(404);
    expect(await response.json()).toMatchObject({ errors: [{ extensions: { code: 'NOT_FOUND' } }] });
  });
});
