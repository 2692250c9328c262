/** Which characters the font of the PDF has, and what to do about the others. */

/** Latin-1, Latin Extended-A, the comma letters of Romanian, and the signs of the app. */
const COVERED =
  /^[\u0020-\u007E\u00A0-\u0131\u0134-\u0148\u014A-\u017E\u0218-\u021B\u2013\u2014\u2018\u2019\u201C\u201D\u2022\u2026\u2044\u2212\u266D-\u266F\u{1D12A}\u{1D12B}]+$/u;
const ACCENTS = /\p{M}/gu;
/** They keep a name from changing the direction of a sentence, and are not to be seen. */
const ISOLATES = /[\u2066-\u2069]/g;

export interface Covered {
  readonly text: string;
  /** Whether something had to be written otherwise. */
  readonly isChanged: boolean;
}

/** The text in characters that the font has: "Nguyễn" as "Nguyên", and what it cannot write at all as "?". */
export function coveredText(text: string): Covered {
  const wished = text
    .normalize('NFC')
    .replace(/[\t\n\r]+/g, ' ')
    .replace(ISOLATES, '');
  const written = [...wished].map((sign) => {
    if (COVERED.test(sign)) return sign;
    return simpler(sign).find((one) => COVERED.test(one)) ?? '?';
  });
  const result = written.join('');
  return { text: result, isChanged: result !== wished };
}

/** A sign with fewer and fewer of its accents. */
function simpler(sign: string): readonly string[] {
  const parts = [...sign.normalize('NFKD')];
  const withOne = parts.slice(1).map((accent) => `${parts[0]}${accent}`.normalize('NFC'));
  return [...withOne, parts.join('').replace(ACCENTS, '')];
}
