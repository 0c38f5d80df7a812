import { beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, readMeter } from './cast.js';
import { changeInput } from './inputs.js';
import type { Client } from './client.js';
import { as } from './people.js';

let technician: Client;
beforeAll(async () => {
  technician = await as('technician@one.example');
  await technician.record('job-plane', 0, [add('TW-JOB'), defineMeter(), readMeter(100_000, `${daysAgo(2)}T12:00Z`)]);
});

const create = (): Promise<string> =>
  technician
    .data('mutation { createJob(input: { aircraftId: "job-plane", title: "Navigator" }) { id } }')
    .then((data) => data.createJob.id as string);
const save = 'mutation ($input: SaveDraftInput!) { saveDraft(input: $input) { draft revision draftSchema state } }';

describe('planned work', () => {
  it('keeps the draft through a refused and an outdated recording', async () => {
    const jobId = await create();
    const draft = JSON.stringify({ steps: [{ hours: 99_000 }] });
    await technician.data(save, { input: { jobId, revision: 3, draftSchema: 1, draft } });
    const send = (expectedRevision: number, dial: number) =>
      technician.send({
        aircraftId: 'job-plane',
        expectedRevision,
        key: `job-key-${dial}-${expectedRevision}`,
        jobId,
        changes: [changeInput(readMeter(dial, `${daysAgo(1)}T12:00Z`))],
      });
    expect((await send(3, 99_000)).errors?.[0]?.extensions.code).toBe('REFUSED');
    expect((await send(2, 100_100)).errors?.[0]?.extensions.code).toBe('STALE_REVISION');
    const job = `{ job(id: "${jobId}") { draft state revision aircraft { registration } } jobs(aircraftId: "job-plane") { id } }`;
    expect((await technician.data(job)).job).toEqual({
      draft,
      state: 'OPEN',
      revision: 3,
      aircraft: { registration: 'TW-JOB' },
    });
    expect((await send(3, 100_100)).errors).toBeUndefined();
    const after = await technician.data(job);
    expect(after.job).toMatchObject({ draft, state: 'RECORDED' });
    expect(after.jobs).toEqual([]);
  });

  it('takes a draft up to its length and none beyond it, and keeps the one it had', async () => {
    const jobId = await create();
    const draft = JSON.stringify('x'.repeat(199_998));
    const input = { jobId, revision: 3, draftSchema: 1, draft };
    await technician.data(save, { input });
    expect(await technician.problem(save, { input: { ...input, draft: `${draft} ` } })).toMatchObject({
      code: 'TOO_LARGE',
    });
    expect((await technician.data(`{ job(id: "${jobId}") { draft } }`)).job.draft).toBe(draft);
    expect(await technician.problem(save, { input: { ...input, jobId: 'no-such-job' } })).toMatchObject({
      code: 'NOT_FOUND',
    });
  });

  it('is closed by discarding, once', async () => {
    const jobId = await create();
    const discard = `mutation { discardJob(id: "${jobId}") { state } }`;
    expect((await technician.data(discard)).discardJob.state).toBe('DISCARDED');
    expect(await technician.problem(discard)).toMatchObject({ code: 'BAD_INPUT', field: 'id' });
    expect(
      await technician.problem(save, { input: { jobId, revision: 3, draftSchema: 1, draft: '{}' } }),
    ).toMatchObject({ code: 'BAD_INPUT', field: 'input.jobId' });
  });

  it.each([
    ['input.draft', { draft: 'not json' }],
    ['input.revision', { revision: -1 }],
  ])('names %s when it is wrong', async (field, wrong) => {
    const input = { jobId: await create(), revision: 3, draftSchema: 1, draft: '{}', ...wrong };
    expect(await technician.problem(save, { input })).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('needs an aircraft that is there, and a title', async () => {
    const createJob = 'mutation ($input: CreateJobInput!) { createJob(input: $input) { id } }';
    expect(await technician.problem(createJob, { input: { aircraftId: 'none', title: 'x' } })).toMatchObject({
      code: 'NOT_FOUND',
      field: 'input.aircraftId',
    });
    expect(await technician.problem(createJob, { input: { aircraftId: 'job-plane', title: '  ' } })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'input.title',
    });
  });
});
