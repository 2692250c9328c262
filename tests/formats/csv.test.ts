import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { type Cell, csvOf, guardFormulas } from '../../shared/formats/csv';
import { fc } from '../learning/property';

/** Read back by another parser than the one that wrote it, held to RFC 4180: CR LF, quotes, equal rows. */
const read = (csv: string): string[][] =>
  parse(csv, { recordDelimiter: '\r\n', bom: true, relaxColumnCount: false, relaxQuotes: false });

describe('CSV as RFC 4180 has it', () => {
  it('rule 1, 2: each record on a line of its own that ends with CR LF', () => {
    expect(csvOf(['a', 'b'], [['x', 1]])).toBe('"a","b"\r\n"x",1\r\n');
  });

  it('rule 5, 6: text is quoted, also with line ends, quotes and commas in it', () => {
    expect(csvOf(['a'], [['1,"2"\r\n3']])).toBe('"a"\r\n"1,""2""\r\n3"\r\n');
  });

  it('rule 7: a quote within quotes is doubled', () => {
    expect(csvOf(['a'], [['"']])).toBe('"a"\r\n""""\r\n');
  });

  it('an empty cell is empty, an empty text is quoted, numbers stay numbers', () => {
    expect(csvOf(['a', 'b', 'c', 'd'], [[null, '', -1.5, 0]])).toContain(',"",-1.5,0\r\n');
  });

  it('has a byte order mark if asked for', () => {
    expect(csvOf(['a'], [], { bom: true })).toBe('\uFEFF"a"\r\n');
  });

  it('any table comes back as it was, apart from the guard', () => {
    const unit = fc.constantFrom(...'aß "\',;|\r\n\t=+-@\u2028🎹', '\0', '\uFEFF');
    const cell = fc.oneof(
      fc.string({ unit, maxLength: 20 }),
      fc.constantFrom('=1+1', '"', '\r\n', ',', ' -x\n@y', '\u00a0+'),
      fc.integer(),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 8 }), (rows) => {
        const wanted = rows.map((row) =>
          row.map((one: Cell) => (typeof one === 'string' ? guardFormulas(one) : String(one))),
        );
        expect(read(csvOf(['a', 'b', 'c'], rows))).toEqual([['a', 'b', 'c'], ...wanted]);
      }),
      { numRuns: 200 },
    );
  });
});

describe('text that a spreadsheet would take for a formula (OWASP, CSV injection)', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\t=1', "'\t=1"],
    ['\rx', "'\rx"],
    ['\nx', "'\nx"],
    ['   =1', "'   =1"],
    ['\u00a0\u2003=1', "'\u00a0\u2003=1"],
    ['＝1', "'＝1"],
    ['fine\n=1', "fine\n'=1"],
    ['fine\r\n @x\r\n-y', "fine\r\n' @x\r\n'-y"],
  ])('%j is guarded', (text, guarded) => {
    expect(guardFormulas(text)).toBe(guarded);
  });

  it.each(['', 'D♯/E♭', 'major triad, first inversion', '2026-11-25', 'a=b', '5 3', "'=1"])(
    '%j is left alone',
    (text) => {
      expect(guardFormulas(text)).toBe(text);
    },
  );

  it('no line of any cell begins with a formula', () => {
    const blanks = fc.array(fc.constantFrom(' ', '\u00a0', '\u2003', '\t'), { maxLength: 3 });
    const line = fc
      .tuple(blanks, fc.constantFrom(...'=+-@＝a', ''), fc.string({ maxLength: 3 }))
      .map(([before, sign, rest]) => before.join('') + sign + rest);
    const text = fc
      .tuple(fc.array(line, { maxLength: 4 }), fc.constantFrom('\n', '\r', '\r\n'))
      .map(([lines, end]) => lines.join(end));
    fc.assert(
      fc.property(text, (cell) => {
        const guarded = guardFormulas(cell);
        for (const part of guarded.split(/[\r\n]/)) expect(part).not.toMatch(/^\s*[=+\-@＝＋－＠]/);
        expect(guarded).not.toMatch(/^[\t\r\n]/);
      }),
      { numRuns: 500 },
    );
  });
});
