/** Which characters the font of the PDF has, and what to do about the others. */

const COVERED =
  /[\u0020-\u007E\u00A0-\u00FF\u0131\u0152\u0153\u2013\u2014\u2018\u2019\u201C\u201D\u2022\u2026\u2044\u2212\u266D-\u266F\u{1D12A}\u{1D12B}]$/u;
const ACCENTS = /\p{M}/gu;
/** Letters that are no base with an accent. */
const PLAIN: Readonly<Record<string, string>> = { Ł: 'L', ł: 'l', Đ: 'D', đ: 'd', Ħ: 'H', ħ: 'h' };

export interface Covered {
  readonly text: string;
  /** Whether something had to be written otherwise. */
  readonly isChanged: boolean;
}

/** The text in characters that the font has: "Jiří" as "Jirí", and what it cannot write at all as "?". */
export function coveredText(text: string): Covered {
  const plain = text.normalize('NFC').replace(/[\t\n\r]+/g, ' ');
  const written = [...plain].map((sign) => {
    if (COVERED.test(sign)) return sign;
    const base = PLAIN[sign] ?? sign.normalize('NFD').replace(ACCENTS, '');
    return COVERED.test(base) ? base : '?';
  });
  const result = written.join('');
  return { text: result, isChanged: result !== plain };
}
