// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keepScreenLit } from '../../src/sound/wake-lock';

class FakeSentinel extends EventTarget {
  released = false;
  release = async (): Promise<void> => {
    this.released = true;
    this.dispatchEvent(new Event('release'));
  };
}

let given: FakeSentinel[];
let answer: () => Promise<FakeSentinel>;

/** Also lets pending answers arrive. */
async function setHidden(isHidden: boolean): Promise<void> {
  vi.spyOn(document, 'hidden', 'get').mockReturnValue(isHidden);
  document.dispatchEvent(new Event('visibilitychange'));
  await Promise.resolve();
}

const grant = async (): Promise<FakeSentinel> => {
  const sentinel = new FakeSentinel();
  given.push(sentinel);
  return sentinel;
};

beforeEach(() => {
  given = [];
  answer = grant;
  vi.stubGlobal('navigator', { wakeLock: { request: () => answer() } });
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('keepScreenLit', () => {
  it('holds the lock until it is released', async () => {
    const lock = keepScreenLit();
    expect(lock.state.value).toBe('asked');
    await expect.poll(() => lock.state.value).toBe('on');
    lock.release();
    expect(given.map((sentinel) => sentinel.released)).toEqual([true]);
    expect(lock.state.value).toBe('off');
  });

  it('asks again when the page comes back, and not after the release', async () => {
    const lock = keepScreenLit();
    await expect.poll(() => lock.state.value).toBe('on');
    await setHidden(true);
    await given[0]!.release();
    expect(lock.state.value).toBe('off');
    await setHidden(false);
    await expect.poll(() => lock.state.value).toBe('on');
    expect(given).toHaveLength(2);
    lock.release();
    await setHidden(false);
    expect(given).toHaveLength(2);
  });

  it('gives back a lock that is granted after the release', async () => {
    const lock = keepScreenLit();
    expect(lock.state.value).toBe('asked');
    lock.release();
    await expect.poll(() => given[0]?.released).toBe(true);
    expect(lock.state.value).toBe('off');
  });

  it('shows a refusal, and a browser that has no such lock, without an error', async () => {
    answer = () => Promise.reject(new DOMException('low battery', 'NotAllowedError'));
    const refused = keepScreenLit();
    await expect.poll(() => refused.state.value).toBe('off');
    vi.stubGlobal('navigator', {});
    const impossible = keepScreenLit();
    await expect.poll(() => impossible.state.value).toBe('off');
    refused.release();
    impossible.release();
  });
});
