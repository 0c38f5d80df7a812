import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tool } from './paths.mjs';
import { shown } from './run.mjs';

/**
 * @typedef {{ label: string, projects: string[], env?: Record<string, string> }} TestRun
 * @typedef {{ passed: number, failed: number, problems: string[] }} TestResult
 */

/** Reads the report of one run. A file that does not load, and a test that was skipped, count as failed. */
function read(report, code) {
  const skipped = report.numPendingTests + report.numTodoTests;
  const broken = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  const problems = broken.map((file) => `${file.name} does not load`);
  if (skipped > 0) problems.push(`${skipped} tests were skipped: run them or take them out`);
  let failed = report.numFailedTests + broken.length + skipped;
  if (report.numTotalTests === 0) {
    problems.push('no test was found');
    failed = Math.max(failed, 1);
  } else if (code !== 0 && failed === 0) {
    problems.push('the run failed outside of a test, see above');
    failed = 1;
  }
  return { passed: report.numPassedTests, failed, problems };
}

/**
 * Runs one or more projects of vitest.config.ts and counts.
 * @param {TestRun} run
 * @param {string[]} [filters] parts of file names
 * @returns {Promise<TestResult>}
 */
export async function runTests({ projects, env = {} }, filters = []) {
  const folder = mkdtempSync(join(tmpdir(), 'tallywing-tests-'));
  const file = join(folder, 'report.json');
  try {
    const code = await shown(
      process.execPath,
      [
        tool.vitest,
        'run',
        ...projects.flatMap((project) => ['--project', project]),
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${file}`,
        ...filters,
      ],
      { env },
    );
    let report;
    try {
      report = JSON.parse(readFileSync(file, 'utf8'));
    } catch {
      return { passed: 0, failed: 1, problems: [`the run ended with code ${code} and left no report`] };
    }
    return read(report, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
