import { expect, test } from 'vitest';
import { type Sound, spectraOf } from '../../../shared/listening/sound/spectrum';
import { seededRandom } from '../performer';

const RATE = 8000;
const noise = (length: number): Sound => {
  const random = seededRandom(3);
  return { samples: Float32Array.from({ length }, () => random() - 0.5), rate: RATE };
};

/** The definition of the discrete Fourier transform, of samples under a Hann window, padded with silence to `size`. */
function byDefinition(samples: Float32Array, size: number, place: number): number {
  let [real, imaginary] = [0, 0];
  samples.forEach((value, i) => {
    const windowed = value * (0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / samples.length));
    const angle = (2 * Math.PI * place * i) / size;
    real += windowed * Math.cos(angle);
    imaginary -= windowed * Math.sin(angle);
  });
  return (2 * Math.hypot(real, imaginary)) / samples.length;
}

test.each([256, 200])('a piece of %i samples has the spectrum of the definition', (length) => {
  const sound = noise(1000);
  const sizes = spectraOf(sound, length).at(300);
  const piece = sound.samples.slice(300, 300 + length);
  expect(sizes).toHaveLength(128);
  for (let place = 0; place < 128; place++) {
    expect(sizes[place]).toBeCloseTo(byDefinition(piece, 256, place), 6);
  }
});

test('a sine has its size at its place, and there is silence outside of the sound', () => {
  const samples = Float32Array.from({ length: 512 }, (_, i) =>
    Math.sin((2 * Math.PI * 1000 * i) / RATE),
  );
  const spectra = spectraOf({ samples, rate: RATE }, 256);
  expect(1000 / spectra.spacing).toBe(32);
  expect(spectra.at(100)[32]).toBeCloseTo(0.5, 3);
  expect(Math.max(...spectra.at(-300))).toBe(0);
  expect(Math.max(...spectra.at(600))).toBe(0);
});
