/** The few assertions of the contract: it also runs in a page, where no test runner is. */

/** As text, to the last digit: typed arrays as one string, maps and sets in their order, fields by name. */
export const textOf = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) => {
    if (ArrayBuffer.isView(part)) return String(part);
    if (part instanceof Map || part instanceof Set) return [...(part as Iterable<unknown>)];
    if (typeof part !== 'object' || part === null || Array.isArray(part)) return part;
    return Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)));
  }) ?? 'undefined';

const LONGEST = 300;

/** Cuts both texts to the neighbourhood of their first difference. */
function difference(actual: string, expected: string): string {
  let from = 0;
  while (from < actual.length && actual[from] === expected[from]) from += 1;
  const part = (text: string) => text.slice(Math.max(0, from - LONGEST / 3), from + LONGEST);
  return `at character ${from}: …${part(actual)}… instead of …${part(expected)}…`;
}

export function same(actual: unknown, expected: unknown, what = 'value'): void {
  const [is, wanted] = [textOf(actual), textOf(expected)];
  if (is !== wanted) throw new Error(`${what}, ${difference(is, wanted)}`);
}

export function holds(condition: boolean, what: string): asserts condition {
  if (!condition) throw new Error(`does not hold: ${what}`);
}

/** The error that a promise rejects with. */
export async function rejection(promise: Promise<unknown>): Promise<Error> {
  const outcome = await promise.then(
    () => null,
    (error: unknown) => error,
  );
  holds(outcome instanceof Error, 'it is rejected');
  return outcome;
}

/** Waits until something is so. The runner's own time limit ends it if it never is. */
export async function until(condition: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await condition())) {
    await new Promise((resume) => {
      setTimeout(resume, 5);
    });
  }
}
