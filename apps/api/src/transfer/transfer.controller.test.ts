import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import compression from 'compression';
import express from 'express';
import { afterEach, describe, expect, it } from 'vitest';
import type { AppLog } from '../common/logging.js';
import { TransferController } from './transfer.controller.js';
import type { TransferService } from './transfer.service.js';

let server: Server | undefined;
afterEach(() => server?.close());

/** Serves one file whose parts come as given, packed as in the application; what is logged as failed is kept. */
async function serve(parts: () => AsyncGenerator<string>): Promise<{ url: string; failures: unknown[] }> {
  const failures: unknown[] = [];
  const service = { house: () => Promise.resolve({ name: 'house.json', parts: parts() }) };
  const log = { failure: (_: string, error: unknown) => failures.push(error) };
  const controller = new TransferController(service as unknown as TransferService, log as unknown as AppLog);
  const application = express().use(compression());
  application.get('/', (request, response) => void controller.house(request, response));
  await new Promise<void>((done) => {
    server = application.listen(0, '127.0.0.1', () => {
      done();
    });
  });
  return { url: `http://127.0.0.1:${(server?.address() as AddressInfo).port}`, failures };
}

const long = `[${'"a line of the record",'.repeat(20_000)}`;

describe('a file on its way out', () => {
  it('arrives whole, packed', async () => {
    const { url } = await serve(async function* () {
      yield long;
      yield '""]';
    });
    const response = await fetch(url);
    expect(response.headers.get('content-encoding')).toBe('gzip');
    expect(await response.json()).toHaveLength(20_001);
  });

  it.each(['gzip', 'identity'])(
    'is broken off where the rest cannot be read, and nobody takes it for whole: %s',
    async (encoding) => {
      const { url, failures } = await serve(async function* () {
        yield long;
        throw new Error('The database went away.');
      });
      const received = fetch(url, { headers: { 'accept-encoding': encoding } }).then((response) => response.text());
      await expect(received).rejects.toThrow();
      expect(failures.map(String)).toEqual(['Error: The database went away.']);
    },
  );
});
