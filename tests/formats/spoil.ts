/** Spoils text in seeded ways, as bad disks, editors and ill will do. Fast enough for thousands of files. */

/** Marsaglia's xorshift (2003), triple 13, 17, 5: a whole number from 0, below a limit. */
export function seededNumbers(seed: number): (limit: number) => number {
  let state = seed | 0 || 1;
  return (limit) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % limit;
  };
}

const PIECES = [
  '{"__proto__":{"polluted":1}}',
  '"__proto__":{"polluted":1},',
  '"constructor":{"prototype":{}},',
  'null',
  '[]',
  '{}',
  '-1',
  '1e999',
  '"\\ud800"',
  '"run"',
  '[[[[[[[[[[]]]]]]]]]]',
  '\n',
  '\r',
  '\u0000',
  '\uFEFF',
  ',',
  '"',
  '}',
  '019ab8a0-0000-7000-8000-000000000001',
  '\ud83c',
  'x'.repeat(21_000),
];

type Numbers = (limit: number) => number;

function replaceSome(text: string, numbers: Numbers, piece: string): string {
  const at = numbers(text.length + 1);
  return text.slice(0, at) + piece + text.slice(at + numbers(40));
}

function replaceValue(text: string, numbers: Numbers, piece: string): string {
  const values = [...text.matchAll(/(?<=":)(?:"[^"]*"|[^,}\]"]+)/g)];
  const value = values[numbers(values.length)];
  if (value === undefined) return piece;
  return text.slice(0, value.index) + piece + text.slice(value.index + value[0].length);
}

function moveLine(text: string, numbers: Numbers): string {
  const lines = text.split('\n');
  const [line] = lines.splice(numbers(lines.length), 1);
  return numbers(2) === 0
    ? lines.join('\n')
    : lines.toSpliced(numbers(lines.length), 0, line!).join('\n');
}

/** The text with one to three faults. */
export function spoil(text: string, numbers: Numbers): string {
  let spoilt = text;
  for (let faults = numbers(3); faults >= 0; faults--) {
    const piece = PIECES[numbers(PIECES.length)]!;
    const way = numbers(6);
    if (way < 2) spoilt = replaceSome(spoilt, numbers, piece);
    else if (way < 4) spoilt = replaceValue(spoilt, numbers, piece);
    else if (way === 4) spoilt = moveLine(spoilt, numbers);
    else spoilt = spoilt.slice(0, numbers(spoilt.length + 1));
  }
  return spoilt;
}
