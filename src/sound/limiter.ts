/** Keeps many notes at once from clipping: what is loud is rounded off smoothly, what is not stays as it is. */

/** So many times full scale still comes out unclipped: two hands with chords, pedal and beat together. */
const HEADROOM = 8;
/** Of full scale: below it nothing is changed. */
const KNEE = 0.75;
/** Odd, so that silence is one of the points and stays silent. */
const POINTS = 8193;

/** Between -1 and 1, however large the value. */
export function limited(value: number): number {
  const size = Math.abs(value);
  if (size <= KNEE) return value;
  const rest = 1 - KNEE;
  return Math.sign(value) * (KNEE + rest * Math.tanh((size - KNEE) / rest));
}

/** Where sounds are to be connected. Without delay, so that notes and clicks stay together. */
export function createLimiter(context: BaseAudioContext): AudioNode {
  const curve = Float32Array.from({ length: POINTS }, (_, i) =>
    limited(HEADROOM * ((2 * i) / (POINTS - 1) - 1)),
  );
  const input = new GainNode(context, { gain: 1 / HEADROOM });
  input.connect(new WaveShaperNode(context, { curve })).connect(context.destination);
  return input;
}
