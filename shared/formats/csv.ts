/** Tables as CSV (RFC 4180), safe to be opened in a spreadsheet. */
import Papa from 'papaparse';

/** null is an empty cell. */
export type Cell = string | number | null;

export interface CsvOptions {
  /** A byte order mark, without which some spreadsheets take UTF-8 for another encoding. */
  readonly bom?: boolean;
}

/**
 * Where a spreadsheet would take text for a formula: each line of a cell that begins, after blanks of any kind, with one
 * of = + - @ or their full-width forms, and a cell that begins with a tab or a line end (OWASP, CSV injection).
 */
const FORMULA_START = /^(?=[^\S\r\n]*[=+\-@＝＋－＠])/gm;
const CONTROL_START = /^(?=[\t\r\n])/;

/** The text with a single quote before whatever a spreadsheet would run. */
export const guardFormulas = (text: string): string =>
  text.replace(FORMULA_START, "'").replace(CONTROL_START, "'");

const isText = (cell: unknown): cell is string => typeof cell === 'string';

/** Rows of the same length under a header. Text is quoted, numbers are not; lines end with CR LF, the last one too. */
export function csvOf(
  header: readonly string[],
  rows: readonly (readonly Cell[])[],
  { bom = false }: CsvOptions = {},
): string {
  const guarded = [header, ...rows].map((row) =>
    row.map((cell) => (isText(cell) ? guardFormulas(cell) : cell)),
  );
  const text = Papa.unparse(guarded, { quotes: isText, newline: '\r\n' });
  return `${bom ? '\uFEFF' : ''}${text}\r\n`;
}
