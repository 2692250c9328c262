import { describe, expect, it } from 'vitest';
import { heardAt } from '../../src/sound/heard';

const stamp = (contextTime: number, performanceTime: number) => ({
  getOutputTimestamp: () => ({ contextTime, performanceTime }),
});

describe('the time at which a beat is heard', () => {
  it('is the one that the browser measures', () => {
    // Sample 1.95 s is leaving the loudspeaker at 5010 ms: the beat at 2.2 s follows a quarter of a second later.
    expect(heardAt({ currentTime: 2, ...stamp(1.95, 5010) }, 2.2, 5000)).toBeCloseTo(5260, 6);
  });

  it('is estimated from the latency of the output, or else of the context', () => {
    const context = { currentTime: 2, baseLatency: 0.01 };
    expect(heardAt({ ...context, outputLatency: 0.04 }, 2.2, 5000)).toBeCloseTo(5240, 6);
    expect(heardAt({ ...context, outputLatency: 0 }, 2.2, 5000)).toBeCloseTo(5210, 6);
    expect(heardAt(context, 2.2, 5000)).toBeCloseTo(5210, 6);
    expect(heardAt({ currentTime: 2 }, 2.2, 5000)).toBeCloseTo(5200, 6);
  });

  it('does not believe a stamp from before the sound flows, nor one of another clock', () => {
    expect(heardAt({ currentTime: 2, ...stamp(0, 0) }, 2.2, 5000)).toBeCloseTo(5200, 6);
    expect(heardAt({ currentTime: 2, ...stamp(1.95, 90_000) }, 2.2, 5000)).toBeCloseTo(5200, 6);
  });
});
