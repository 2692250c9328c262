/**
 * The one test command (`npm test`): every check in order, all of them even after a failure, so that one run tells
 * everything. Its last line is "N passed, N failed"; a check that is no test run counts as one.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { needChromium } from './browser/chromium';
import { needPoppler } from './report/poppler';

interface Outcome {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
  readonly seconds: number;
}

const REPORT = '.build/tests.json';

function run(command: readonly string[]): boolean {
  const { status } = spawnSync('npx', ['--no-install', ...command], { stdio: 'inherit' });
  return status === 0;
}

function check(name: string, action: () => boolean): Outcome {
  const { counts, seconds } = timed(name, () => {
    const isFine = action();
    return { passed: isFine ? 1 : 0, failed: isFine ? 0 : 1 };
  });
  return { name, ...counts, seconds };
}

function tests(name: string, projects: readonly string[]): Outcome {
  const { counts, seconds } = timed(name, () => {
    rmSync(REPORT, { force: true });
    const isFine = run([
      'vitest',
      'run',
      ...projects.map((project) => `--project=${project}`),
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${REPORT}`,
    ]);
    return countTests(isFine);
  });
  return { name, ...counts, seconds };
}

/** A file that cannot be loaded has no failed test in the report, but the run has failed all the same. */
function countTests(isFine: boolean): { readonly passed: number; readonly failed: number } {
  if (!existsSync(REPORT)) return { passed: 0, failed: 1 };
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(REPORT, 'utf8')) as {
    numPassedTests: number;
    numFailedTests: number;
  };
  return { passed: numPassedTests, failed: isFine ? 0 : Math.max(1, numFailedTests) };
}

function timed<T>(name: string, action: () => T): { readonly counts: T; readonly seconds: number } {
  console.log(`\n== ${name}`);
  const start = performance.now();
  const counts = action();
  return { counts, seconds: (performance.now() - start) / 1000 };
}

function has(need: () => string): boolean {
  try {
    console.log(need());
    return true;
  } catch (error) {
    console.error((error as Error).message);
    return false;
  }
}

const outcomes = [
  check('format', () => run(['prettier', '--check', '.'])),
  check('lint', () => run(['oxlint'])),
  ...['shared', 'src', 'service-worker', 'tests'].map((project) =>
    check(`types of ${project}`, () => run(['tsc', '-p', project])),
  ),
  check('build', () => run(['tsx', 'service-worker/build.ts'])),
  check('size', () => run(['tsx', 'tests/size.ts'])),
  check('poppler-utils', () => has(needPoppler)),
  tests('tests', ['unit', 'dom']),
  check('Chromium', () => has(needChromium)),
  tests('tests in the browser', ['browser']),
];

console.log('\n== summary');
for (const { name, passed, failed, seconds } of outcomes) {
  const mark = failed === 0 ? 'ok  ' : 'FAIL';
  console.log(`${mark} ${name}: ${passed} passed, ${failed} failed (${seconds.toFixed(0)} s)`);
}
const sum = (key: 'passed' | 'failed') => outcomes.reduce((total, one) => total + one[key], 0);
console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
process.exitCode = sum('failed') === 0 ? 0 : 1;
