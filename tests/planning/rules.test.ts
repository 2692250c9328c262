/** Every rule of RULES.md has its tests, and no test cites a rule that is not there. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const RULES = readFileSync('shared/planning/RULES.md', 'utf8')
  .split('\n')
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .filter((cells) => /^[A-Z]{3,}$/.test(cells[1] ?? ''))
  .map((cells) => ({ id: cells[1]!, tests: cells[4]! }));

/** The rules that a test file cites: a name that begins with an id and a colon. */
const citedIn = (file: string): readonly string[] =>
  [...readFileSync(file, 'utf8').matchAll(/(?:it|test)\('([A-Z]{3,}): /g)].map(
    (match) => match[1]!,
  );

test('the rules are read', () => {
  expect(RULES.length).toBeGreaterThan(10);
});

test.each(RULES)('$id is cited in $tests', ({ id, tests }) => {
  expect(citedIn(tests)).toContain(id);
});

test('every rule that a test cites is written down', () => {
  const files = readdirSync('tests/planning', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => `tests/planning/${name}`);
  const known = new Set(RULES.map(({ id }) => id));
  expect(files.flatMap(citedIn).filter((id) => !known.has(id))).toEqual([]);
});
