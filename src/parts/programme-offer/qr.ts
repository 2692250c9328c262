/** QR codes (ISO/IEC 18004) of links. Loaded only when one is drawn or read. */
import { encodeQR } from 'qr';
import { decodeQR } from 'qr/decode.js';

/**
 * Bytes: more would need a code of more than 117 dots a side (version 25), which cameras read badly from a screen at
 * arm's length (common practice, no source).
 */
const MOST_BYTES = 1273;
/** Above this the dots are few rather than safe: nothing smudges a screen. Level L holds a quarter more than M. */
const SAFE_BYTES = 500;

/**
 * The dots of a QR code by rows, with the quiet margin of four that the standard asks for; null where the text is too
 * long to be read well.
 */
export function dotsOf(text: string): readonly (readonly boolean[])[] | null {
  const bytes = new TextEncoder().encode(text).length;
  if (bytes > MOST_BYTES) return null;
  return encodeQR(text, 'raw', { ecc: bytes > SAFE_BYTES ? 'low' : 'medium', border: 4 });
}

/** As a path of squares of one unit. */
export const pathOf = (dots: readonly (readonly boolean[])[]): string =>
  dots
    .flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])))
    .join('');

/** The text of the QR code in a picture, RGBA; null if there is none that can be read in so many milliseconds. */
export function readDots(image: ImageData, timeLimit: number): string | null {
  try {
    return decodeQR(image, { timeLimit });
  } catch {
    return null;
  }
}
