/** Measures every sign once: the library asks for the same few again with each note, and a browser answers slowly. */
import { Element } from 'vexflow/core';

const known = new Map<string, TextMetrics>();
const canvas = document.createElement('canvas').getContext('2d')!;

/** All of a canvas that the library uses for it. */
const asked = {
  font: '',
  measureText(text: string): TextMetrics {
    const key = `${asked.font} ${text}`;
    const before = known.get(key);
    if (before) return before;
    canvas.font = asked.font;
    const measured = canvas.measureText(text);
    known.set(key, measured);
    return measured;
  },
};

export const measureOnce = (): void =>
  Element.setTextMeasurementCanvas({ getContext: () => asked } as unknown as HTMLCanvasElement);
