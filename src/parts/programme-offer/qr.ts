/** QR codes (ISO/IEC 18004) of links. Loaded only when one is drawn or read. */
import { encodeQR } from 'qr';
import { decodeQR } from 'qr/decode.js';

/** Bytes: more make dots so small that cameras read them badly from a screen. */
const MOST_BYTES = 1000;

/**
 * The dots of a QR code by rows, with the quiet margin of four that the standard asks for; null where the text is too
 * long to be read well.
 */
export function dotsOf(text: string): readonly (readonly boolean[])[] | null {
  if (new TextEncoder().encode(text).length > MOST_BYTES) return null;
  return encodeQR(text, 'raw', { ecc: 'medium', border: 4 });
}

/** As a path of squares of one unit. */
export const pathOf = (dots: readonly (readonly boolean[])[]): string =>
  dots
    .flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])))
    .join('');

/** The text of the QR code in a picture, RGBA; null if there is none that can be read. */
export function readDots(image: ImageData): string | null {
  try {
    return decodeQR(image, { timeLimit: 2000 });
  } catch {
    return null;
  }
}
