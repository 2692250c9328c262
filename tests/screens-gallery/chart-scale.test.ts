import { describe, expect, it } from 'vitest';
import { dayScale, type Frame, markScale, sharesOfDay } from '../../src/screens/item/chart-scale';

const FRAME: Frame = { width: 400, height: 200, left: 40, right: 380, top: 10, bottom: 170 };

describe('the scale of tempos', () => {
  it('has round numbers around everything shown', () => {
    const { ticks } = markScale([43, 58, 60], FRAME);
    expect(ticks.map((tick) => tick.label)).toEqual(['40', '45', '50', '55', '60']);
  });

  it('takes larger steps for a larger range', () => {
    const { ticks } = markScale([12, 118], FRAME);
    expect(ticks.map((tick) => tick.label)).toEqual(['0', '40', '80', '120']);
  });

  it('keeps everything within the frame, faster above slower', () => {
    const { y } = markScale([43, 58, 60], FRAME);
    expect(y(60)).toBe(FRAME.top);
    expect(y(40)).toBe(FRAME.bottom);
    expect(y(58)).toBeLessThan(y(43));
  });

  it('stands on one tempo alone', () => {
    const { y } = markScale([50, 50], FRAME);
    expect(y(50)).toBeLessThanOrEqual(FRAME.bottom);
    expect(Number.isFinite(y(50))).toBe(true);
  });
});

describe('the scale of days', () => {
  it('reaches from the first run to the end of today', () => {
    const { x } = dayScale('2026-10-01', '2026-11-25', FRAME);
    expect(x('2026-10-01', 0)).toBe(FRAME.left);
    expect(x('2026-11-25', 1)).toBeCloseTo(FRAME.right, 9);
  });

  it('is a week at least', () => {
    const { x } = dayScale('2026-11-25', '2026-11-25', FRAME);
    expect(x('2026-11-19', 0)).toBe(FRAME.left);
  });

  it('puts runs of one day side by side in their order', () => {
    expect(sharesOfDay(['a', 'b', 'b', 'b', 'c'])).toEqual([0.5, 0.25, 0.5, 0.75, 0.5]);
  });
});
