/** Key signatures, at the beginning of a system and where the key changes. */
import type { Clef } from '../../../shared/music/engraving/reading';
import { type PrintedKey, stepsOfKey } from '../../../shared/music/engraving/signature';
import { addSign, SIGN, SPACE } from './drawing';

/** From one sign to the next, and after the last. */
const SHARP_STEP = SPACE;
const FLAT_STEP = 0.9 * SPACE;
const AFTER_KEY = 0.9 * SPACE;
const BOTTOM_LINE = 4 * SPACE;

const stepWidth = ({ fifths, isTakenBack }: PrintedKey): number =>
  fifths > 0 || isTakenBack ? SHARP_STEP : FLAT_STEP;

/** Of a key and the room after it; nothing for one without signs. */
export const keyWidth = (key: PrintedKey): number =>
  key.fifths === 0 ? 0 : Math.abs(key.fifths) * stepWidth(key) + AFTER_KEY;

/** Draws a key from `x` on, on a staff whose top line lies at y = 0. */
export function drawKey(parent: Element, key: PrintedKey, clef: Clef, x: number): void {
  const sign = key.isTakenBack ? SIGN.natural : key.fifths > 0 ? SIGN.sharp : SIGN.flat;
  stepsOfKey(key.fifths, clef).forEach((step, i) => {
    addSign(parent, sign, x + i * stepWidth(key), BOTTOM_LINE - (step * SPACE) / 2);
  });
}
