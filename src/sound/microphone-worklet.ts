/** Runs beside the sound and only hands it on: the microphone's first channel, block by block. */

// The types of this scope are not among those of a page.
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
  abstract process(inputs: readonly (readonly Float32Array[])[]): boolean;
}
/** Of the context, at the beginning of the block that is processed. */
declare const currentFrame: number;
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

export interface Collected {
  readonly blocks: readonly Float32Array[];
  /** Frame of the context at which they end. */
  readonly end: number;
}

/** Blocks of 128 samples that are handed on together: 23 messages a second at 48 kHz. */
const TOGETHER = 16;

class Collector extends AudioWorkletProcessor {
  private collected: Float32Array[] = [];

  override process([input]: readonly (readonly Float32Array[])[]): boolean {
    const block = input?.[0];
    // The browser uses its array again.
    if (block !== undefined) this.collected.push(block.slice());
    if (this.collected.length >= TOGETHER) {
      const last = this.collected.at(-1)!;
      const told: Collected = { blocks: this.collected, end: currentFrame + last.length };
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a port's postMessage has no origin
      this.port.postMessage(told);
      this.collected = [];
    }
    return true;
  }
}

registerProcessor('collector', Collector);
