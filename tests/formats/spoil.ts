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
  '1e308',
  '-0',
  '9'.repeat(400),
  '9007199254740993',
  '"version":1,"version":2,',
  '"student":null,"id":"a","id":7,',
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

/** A spoilt text as the bytes of a file: of some encoding, whole, cut within a letter, or with bytes changed. */
export function spoiltBytes(text: string, numbers: Numbers): Uint8Array<ArrayBuffer> {
  const spoilt = spoil(text, numbers);
  const encoding = (['utf8', 'utf8', 'utf8', 'utf16le', 'latin1'] as const)[numbers(5)]!;
  const bytes = Uint8Array.from(Buffer.from(spoilt, encoding));
  const way = numbers(3);
  if (way === 0) return bytes;
  if (way === 1) return bytes.slice(0, numbers(bytes.length + 1));
  for (let faults = numbers(4); faults >= 0 && bytes.length > 0; faults--) {
    bytes[numbers(bytes.length)] = numbers(256);
  }
  return bytes;
}
