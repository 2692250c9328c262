/** How far a piano lies from A4 = 440 Hz, whatever is played on it. */
import { lengthAt, type Sound, spectraOf } from './spectrum';

/** Samples of sound of a spectrum, and seconds from one to the next. */
const WINDOW = 16_384;
const HOP = 0.09;
/** Hertz: below semitones lie too close, above strings are too stiff. */
const LOWEST = 170;
const HIGHEST = 1200;
/** Tones that count: so loud against the loudest of all. */
const LOUD = 0.05;
/** How well tones must agree: 0 not at all, 1 wholly. */
const AGREED = 0.5;
/** Semitones from 440 Hz to 430 and to 446 Hz are -40 and 23 cents; beyond this it is another note. */
export const MOST_OFF = 50;

/**
 * Cents, from -50 to 50; null where the tones do not agree. The mean of all tones by their place between two semitones,
 * taken as angles (Mardia 1972, Statistics of Directional Data), louder ones counting more.
 */
export function tuningOf(sound: Sound): number | null {
  const { samples, rate } = sound;
  const length = lengthAt(rate, WINDOW);
  const spectra = spectraOf(sound, length, HIGHEST);
  const tones: { readonly cents: number; readonly size: number }[] = [];
  for (let from = 0; from + length <= samples.length; from += Math.round(HOP * rate)) {
    const sizes = spectra.at(from);
    const last = Math.min(sizes.length - 2, Math.floor(HIGHEST / spectra.spacing));
    for (let k = Math.ceil(LOWEST / spectra.spacing); k <= last; k++) {
      const [before, size, after] = [sizes[k - 1]!, sizes[k]!, sizes[k + 1]!];
      if (size < before || size <= after || size < 1e-6) continue;
      const [a, b, c] = [Math.log(before + 1e-12), Math.log(size), Math.log(after + 1e-12)];
      const frequency = (k + (0.5 * (a - c)) / (a - 2 * b + c)) * spectra.spacing;
      tones.push({ cents: 1200 * Math.log2(frequency / 440), size });
    }
  }
  const loudest = Math.max(0, ...tones.map(({ size }) => size));
  let [x, y, weight] = [0, 0, 0];
  for (const { cents, size } of tones) {
    if (size < LOUD * loudest) continue;
    const angle = (2 * Math.PI * cents) / 100;
    x += size * Math.cos(angle);
    y += size * Math.sin(angle);
    weight += size;
  }
  if (weight === 0 || Math.hypot(x, y) < AGREED * weight) return null;
  return (Math.atan2(y, x) * 100) / (2 * Math.PI);
}

/** Cents from which a piano is another than the one that was checked; one run tells its tuning to within 4 of them. */
const OTHER_PIANO = 12;

/** Of what was heard now and what was checked before, null where it could not be told or was not checked. */
export function tuningNow(own: number | null, checked: number | null): number {
  if (checked === null || own === null) return checked ?? own ?? 0;
  return Math.abs(own - checked) < OTHER_PIANO ? checked : own;
}
