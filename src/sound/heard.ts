/** The parts of an AudioContext that tell when a sample is heard. All but the first are missing in some browser. */
export type OutputClock = Pick<AudioContext, 'currentTime'> &
  Partial<Pick<AudioContext, 'baseLatency' | 'outputLatency' | 'getOutputTimestamp'>>;

/** Milliseconds. A stamp further off than this is no measurement: before sound flows, some browsers answer with zeros. */
const BELIEVABLE = 1000;

/**
 * When the sample at `time` (seconds of the context) is heard, in milliseconds of `performance.now()`, of which `now` is
 * the present value. Measured by the browser where it can, estimated from the latency that it states elsewhere.
 */
export function heardAt(context: OutputClock, time: number, now: number): number {
  const latency = context.outputLatency || context.baseLatency || 0;
  const estimate = now + (time - context.currentTime + latency) * 1000;
  const { contextTime, performanceTime } = context.getOutputTimestamp?.() ?? {};
  if (!contextTime || !performanceTime) return estimate;
  const measured = performanceTime + (time - contextTime) * 1000;
  return Math.abs(measured - estimate) < BELIEVABLE ? measured : estimate;
}
