/**
 * The one test command (`npm test`): every check, all of them even after a failure, so that one run tells everything. Its
 * last line is "N passed, N failed"; a check that is no test run counts as one. The tests in the browser wait more than
 * they compute, so everything else is done meanwhile, in turn; what it says is shown when it has ended.
 */
import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';

interface Counts {
  readonly passed: number;
  readonly failed: number;
}

interface Outcome extends Counts {
  readonly name: string;
  readonly seconds: number;
  /** What failed, if only once, and how it began. */
  readonly failures: readonly string[];
}

interface Ending {
  readonly isFine: boolean;
  /** What it said, unless it was shown at once. */
  readonly words: string;
}

type Shown = 'at once' | 'at the end';

/** Runs a program of ours to its end. One that cannot be started or crashes has failed as well. */
function run([program, ...options]: readonly string[], shown: Shown = 'at the end') {
  return new Promise<Ending>((resolve) => {
    const stdio = shown === 'at once' ? 'inherit' : 'pipe';
    const child = spawn(`node_modules/.bin/${program}`, options, { stdio });
    const words: Buffer[] = [];
    const tell = (isFine: boolean) =>
      resolve({ isFine, words: Buffer.concat(words).toString('utf8') });
    child.stdout?.on('data', (part: Buffer) => words.push(part));
    child.stderr?.on('data', (part: Buffer) => words.push(part));
    child.on('error', (error) => {
      words.push(Buffer.from(error.message));
      tell(false);
    });
    child.on('close', (status) => tell(status === 0));
  });
}

async function check(name: string, command: readonly string[]): Promise<Outcome> {
  const start = performance.now();
  const { isFine, words } = await run(command);
  console.log(`\n== ${name}\n${words.trimEnd()}`);
  const counts = { passed: isFine ? 1 : 0, failed: isFine ? 0 : 1 };
  return { name, ...counts, failures: [], seconds: secondsSince(start) };
}

async function tests(
  name: string,
  projects: readonly string[],
  shown: Shown = 'at the end',
): Promise<Outcome> {
  const start = performance.now();
  const report = `.build/tests-${projects.join('-')}.json`;
  rmSync(report, { force: true });
  const command = [
    'vitest',
    'run',
    ...projects.map((project) => `--project=${project}`),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ];
  if (shown === 'at once') console.log(`\n== ${name}`);
  const { isFine, words } = await run(command, shown);
  if (shown === 'at the end') console.log(`\n== ${name}\n${words.trimEnd()}`);
  return { name, ...countTests(report, isFine), seconds: secondsSince(start) };
}

const secondsSince = (start: number): number => (performance.now() - start) / 1000;

/** What is read of the report of a test run, in vitest's own form. */
interface TestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message: string;
    readonly assertionResults: readonly {
      readonly status: string;
      readonly fullName: string;
      readonly failureMessages: readonly string[];
    }[];
  }[];
}

const LINES_OF_FAILURE = 6;

const told = (title: string, message: string): string =>
  [title, ...message.split('\n').slice(0, LINES_OF_FAILURE)].join('\n       ');

/**
 * The failed tests of a run, each with the first lines of why, and those that passed only when they were tried again; of a
 * file that could not be loaded, the file.
 */
function failuresIn({ testResults }: TestReport): readonly string[] {
  return testResults.flatMap(({ name, status, message, assertionResults }) => {
    const failed = assertionResults.filter((one) => one.failureMessages.length > 0);
    if (status === 'failed' && failed.length === 0) return [told(name, message)];
    return failed.map(({ fullName, status: ending, failureMessages }) => {
      const title = ending === 'passed' ? `only when tried again: ${fullName}` : fullName;
      return told(title, failureMessages.join('\n'));
    });
  });
}

/** A file that cannot be loaded has no failed test in the report, but the run has failed all the same. */
function countTests(report: string, isFine: boolean): Counts & Pick<Outcome, 'failures'> {
  try {
    const read = JSON.parse(readFileSync(report, 'utf8')) as TestReport;
    const failed = isFine ? 0 : Math.max(1, read.numFailedTests);
    return { passed: read.numPassedTests, failed, failures: failuresIn(read) };
  } catch (error) {
    // It crashed before it could write the report, or while it wrote it.
    return { passed: 0, failed: 1, failures: [(error as Error).message] };
  }
}

const programs = check('programs of the system', ['tsx', 'tests/programs.ts']);

async function inBrowser(): Promise<readonly Outcome[]> {
  return [await programs, await tests('tests in the browser', ['browser'], 'at once')];
}

async function everythingElse(): Promise<readonly Outcome[]> {
  return [
    await check('format', ['prettier', '--check', '.']),
    await check('lint', ['oxlint']),
    await check('types of shared', ['tsc', '-p', 'shared']),
    await check('types of src', ['tsc', '-p', 'src']),
    await check('types of service-worker', ['tsc', '-p', 'service-worker']),
    await check('types of tests', ['tsc', '-p', 'tests']),
    await check('build', ['tsx', 'service-worker/build.ts']),
    await check('size', ['tsx', 'tests/size.ts']),
    // The tests need the programs too.
    await programs.then(() => tests('tests', ['unit', 'dom'])),
  ];
}

const outcomes = (await Promise.all([everythingElse(), inBrowser()])).flat();

console.log('\n== summary');
for (const { name, passed, failed, seconds, failures } of outcomes) {
  const mark = failed === 0 ? 'ok  ' : 'FAIL';
  console.log(`${mark} ${name}: ${passed} passed, ${failed} failed (${seconds.toFixed(0)} s)`);
  // Once more and last, where it is not lost among all that went well.
  for (const failure of failures) console.log(`     ${failure}`);
}
const sum = (key: 'passed' | 'failed') => outcomes.reduce((total, one) => total + one[key], 0);
console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
process.exitCode = sum('failed') === 0 ? 0 : 1;
