import { expect, test, vi } from 'vitest';
import { keepUp } from './keep-up.js';

/** Waits end when the test says so. */
function stage(shown: number) {
  const waits: { ms: number; over: () => void }[] = [];
  const asked: { ok: () => void; fail: () => void }[] = [];
  const keeper = keepUp(
    shown,
    () => new Promise((done, fail) => asked.push({ ok: () => done(), fail: () => fail(new Error('no network')) })),
    (ms) => new Promise((over) => waits.push({ ms, over: () => over() })),
    () => 0.5,
  );
  const step = async (act: () => void) => {
    act();
    await vi.waitFor(() => undefined);
    await new Promise((done) => setTimeout(done, 0));
  };
  return { keeper, waits, asked, step };
}

test('nothing is asked while the house stands where it is shown', async () => {
  const { keeper, waits, step } = stage(7);
  await step(() => keeper.heard(7));
  expect(waits).toEqual([]);
});

test('what happens during the wait and during the question is asked for once, and once more', async () => {
  const { keeper, waits, asked, step } = stage(7);
  await step(() => keeper.heard(8));
  await step(() => keeper.heard(9));
  expect(waits.map(({ ms }) => ms)).toEqual([150]);
  await step(() => waits[0]?.over());
  expect(asked.length).toBe(1);
  await step(() => keeper.heard(10));
  await step(() => asked[0]?.ok());
  await step(() => waits[1]?.over());
  expect(asked.length).toBe(2);
  await step(() => asked[1]?.ok());
  expect(waits.length).toBe(2);
});

test('a question that fails is asked again, later each time', async () => {
  const { keeper, waits, asked, step } = stage(0);
  await step(() => keeper.heard(1));
  for (let times = 0; times < 7; times += 1) {
    await step(() => waits[times]?.over());
    await step(() => asked[times]?.fail());
  }
  expect(waits.map(({ ms }) => ms)).toEqual([150, 2150, 4150, 8150, 16_150, 30_150, 30_150, 30_150]);
  await step(() => waits[7]?.over());
  await step(() => asked[7]?.ok());
  await step(() => keeper.heard(1));
  expect(waits.length).toBe(8);
});

test('a house that was set back is asked for again, and nothing once it is stopped', async () => {
  const { keeper, waits, asked, step } = stage(5);
  await step(() => keeper.heard(2));
  expect(waits.length).toBe(1);
  keeper.stop();
  await step(() => waits[0]?.over());
  await step(() => asked[0]?.ok());
  await step(() => keeper.heard(6));
  expect(waits.length).toBe(1);
});
