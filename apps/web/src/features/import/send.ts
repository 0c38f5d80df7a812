import { problemOf, problemOfPlainAnswer, type Problem } from '../../app/problem.js';

/** Sends files over the plain route; gives the id of the import, or what was wrong with the sending. */
export async function sendFiles(
  files: readonly File[],
  mode: 'dry-run' | 'load',
  differences: string,
): Promise<{ id: string } | { problem: Problem }> {
  const body = new FormData();
  body.set('mode', mode);
  if (differences !== '') body.set('differences', differences);
  for (const file of files) body.append('files', file, file.name);
  try {
    const response = await fetch('/imports', { method: 'POST', body, credentials: 'same-origin' });
    const answer = (await response.json()) as Record<string, unknown>;
    return response.ok ? { id: String(answer['id']) } : { problem: problemOfPlainAnswer(answer) };
  } catch (error) {
    return {
      problem: {
        ...problemOf(error),
        title: 'The files did not arrive.',
        wayOut: 'Check the network and send them again; sending twice doubles nothing.',
      },
    };
  }
}
