import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepSnapshot } from '../../src/snapshot/keep';
import { showSnapshot } from '../../src/snapshot/show';

const KEY = 'today';
let root: HTMLElement;
let isOwn = true;

function List({ minutes, problem }: { readonly minutes: number; readonly problem?: string }) {
  return (
    <>
      {problem && <p role="alert">{problem}</p>}
      <p role="status" />
      <main data-ready="today">
        <svg viewBox="0 0 10 10">
          <path d="M0 0L10 10" />
        </svg>
        <input value={minutes} /> {minutes} minutes
        <a href="#/play">Begin</a>
      </main>
    </>
  );
}

/** The screen as the app draws it, and its picture taken. */
function keep(minutes = 15, problem?: string): void {
  keepSnapshot(root, () => isOwn);
  render(<List minutes={minutes} {...(problem === undefined ? {} : { problem })} />, root);
}
const settle = () => vi.advanceTimersByTimeAsync(1000);
/** Another opening of the page. */
const reopened = (): HTMLElement => {
  const next = document.createElement('div');
  document.body.replaceChildren(next);
  return next;
};

beforeEach(() => {
  vi.useFakeTimers({ now: new Date(2026, 10, 25, 12) });
  document.head.innerHTML = '<link rel="modulepreload" href="./one.js">';
  root = reopened();
});
afterEach(() => {
  vi.useRealTimers();
  localStorage.clear();
  location.hash = '';
});

describe('today’s list at the next opening', () => {
  test('stands as it was, and the app takes the same elements over', async () => {
    keep(15);
    await settle();
    const before = root.innerHTML;
    const next = reopened();
    expect(showSnapshot(next)).toBe(true);
    const [list, input] = [next.querySelector('main'), next.querySelector('input')!];
    expect(input.value).toBe('15');
    expect(next.querySelector('path')!.namespaceURI).toBe('http://www.w3.org/2000/svg');
    render(<List minutes={15} />, next);
    expect(next.querySelector('main')).toBe(list);
    expect(next.innerHTML.replace(' value="15"', '')).toBe(before.replace(' value="15"', ''));
  });

  test('is not shown on another day, after an update, or where the address asks for more', async () => {
    keep();
    await settle();
    location.hash = '#/map';
    expect(showSnapshot(reopened())).toBe(false);
    location.hash = '#/today';
    expect(showSnapshot(reopened())).toBe(true);
    vi.setSystemTime(new Date(2026, 10, 26, 0, 1));
    expect(showSnapshot(reopened())).toBe(false);
    vi.setSystemTime(new Date(2026, 10, 25, 23, 59));
    document.head.innerHTML = '<link rel="modulepreload" href="./two.js">';
    expect(showSnapshot(reopened())).toBe(false);
  });

  test.each(['', 'nonsense', '5', '[[]]'])('what is no picture is none: %s', (damaged) => {
    localStorage.setItem(KEY, damaged);
    expect(showSnapshot(reopened())).toBe(false);
  });

  test.each(['5', '["p"]', '["p",{"<":"1"},[]]'])(
    'a damaged picture is taken away again: %s',
    async (damaged) => {
      keep();
      await settle();
      const kept = JSON.parse(localStorage.getItem(KEY)!) as { sketches: unknown[] };
      kept.sketches.push(JSON.parse(damaged));
      localStorage.setItem(KEY, JSON.stringify(kept));
      const next = reopened();
      expect(showSnapshot(next)).toBe(false);
      expect(next.childNodes).toHaveLength(0);
    },
  );

  test('follows what changes, and is forgotten when something else is on the screen', async () => {
    keep(15);
    await settle();
    render(<List minutes={20} />, root);
    await settle();
    expect(localStorage.getItem(KEY)).toMatch(/"value":"20"/);
    render(<h1>Map</h1>, root);
    await settle();
    expect(localStorage.getItem(KEY)).toBeNull();
  });

  test('of the invented student none is taken', async () => {
    isOwn = false;
    keep();
    await settle();
    isOwn = true;
    expect(localStorage.getItem(KEY)).toBeNull();
  });

  test('with a message on the screen none is taken', async () => {
    keep(15, 'There is no room left.');
    await settle();
    expect(localStorage.getItem(KEY)).toBeNull();
  });
});
