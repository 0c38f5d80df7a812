import { describe, expect, it } from 'vitest';
import { demoWanted, isLoopback, readSettings, SettingsError } from './settings.js';

describe('settings', () => {
  it('have sensible values when nothing is set', () => {
    expect(readSettings({})).toMatchObject({
      port: 4300,
      host: '127.0.0.1',
      databaseUrl: null,
      demo: 'auto',
      origins: [],
      trustProxy: false,
      requestsPerMinute: 3000,
      worker: true,
    });
    expect(readSettings({}).dataDir).toMatch(/\.data$/);
    expect(readSettings({ DATABASE_URL: '', HOST: '', DATA_DIR: '' })).toMatchObject({
      databaseUrl: null,
      host: '127.0.0.1',
    });
  });
  it.each([
    [{ PORT: 'many' }, /PORT/],
    [{ PORT: '70000' }, /PORT/],
    [{ DEMO: 'maybe' }, /DEMO/],
    [{ REQUESTS_PER_MINUTE: '0' }, /REQUESTS_PER_MINUTE/],
    [{ WORKER: 'no' }, /WORKER/],
    [{ DATABASE_URL: 'mysql://x' }, /DATABASE_URL/],
    [{ DATABASE_DIRECT_URL: 'mysql://x' }, /DATABASE_DIRECT_URL/],
  ])('refuse %o', (environment, named) => {
    expect(() => readSettings(environment)).toThrow(SettingsError);
    expect(() => readSettings(environment)).toThrow(named);
  });
});

describe('demo accounts', () => {
  const wanted = (environment: NodeJS.ProcessEnv): boolean => demoWanted(readSettings(environment));
  it('exist only where nobody else can reach them, or when asked for by name', () => {
    expect(wanted({})).toBe(true);
    expect(wanted({ HOST: '0.0.0.0' })).toBe(false);
    expect(wanted({ HOST: '0.0.0.0', DEMO: 'on' })).toBe(true);
    expect(wanted({ DEMO: 'off' })).toBe(false);
    expect(['127.0.0.1', '::1', 'localhost', '127.9.9.9'].every(isLoopback)).toBe(true);
    expect(['0.0.0.0', '192.168.1.2', '127.0.0.1.example'].some(isLoopback)).toBe(false);
  });
});
