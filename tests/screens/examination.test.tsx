import { cleanup, createEvent, fireEvent, render, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { ExaminationBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { itemOf } from '../../shared/music/deck';
import { drawItems } from '../../shared/planning/examination/draw';
import { replay } from '../../shared/planning/student';
import { readDraft } from '../../src/screens/examination/draft';
import { ExaminationScreen } from '../../src/screens/examination/examination-screen';
import { StoreContext } from '../../src/store-context';
import { chordText } from '../../src/parts/words';
import { fakeStore, type FakeStore } from './fake-store';

const programme = { ...DEFAULT_PROGRAMME, notes: ['d', 'e'] } as const;
let store: FakeStore;
beforeEach(() => {
  vi.stubGlobal('scrollTo', () => undefined);
  store = fakeStore([{ kind: 'programme', programme }]);
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = () =>
  render(
    <StoreContext.Provider value={store}>
      <ExaminationScreen />
    </StoreContext.Provider>,
  );
let time = 0;
/** A press so many milliseconds after the one before. */
function pressOn(button: HTMLElement, after = 1000): void {
  const click = createEvent.click(button);
  time += after;
  Object.defineProperty(click, 'timeStamp', { value: time });
  fireEvent(button, click);
}
const press = (name: string | RegExp, after?: number): void =>
  pressOn(screen.getByRole('button', { name }), after);
/** A mark of the result, where all have their marks. */
const markOf = (at: number, name: string): HTMLElement =>
  within(screen.getAllByRole('group')[at]!).getByRole('radio', { name });
const type = (label: RegExp, value: number) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value: String(value) } });

async function begin(seed: number, count: number): Promise<void> {
  show();
  await screen.findByText(/per cent today/);
  type(/^How many/, count);
  type(/^Number of the draw/, seed);
  await screen.findByText(/per cent today/);
  press('Begin');
  await screen.findByText(`Examination, 1 of ${count}`);
}

const kept = (): readonly ExaminationBody[] =>
  store.log.filter((event) => event.kind === 'examination');

test('it asks by name and tempo only, in the order of the draw, and keeps what was marked', async () => {
  await begin(4711, 3);
  const names: string[] = [];
  for (const mark of ['even', 'stopped', 'effortless']) {
    const heading = screen.getByRole('heading', { level: 1 });
    names.push(heading.textContent!);
    // The only note that is named is the one to begin from.
    expect(document.querySelector('svg[role="img"]')).toBeNull();
    press(mark);
  }
  await screen.findByRole('heading', { name: 'Not passed yet' });
  pressOn(markOf(1, 'even'));
  await screen.findByRole('heading', { name: 'Passed' });
  press('Keep the examination');
  await screen.findByText('1 of 1 passed', { exact: false });

  const [examination] = kept();
  expect(examination!.seed).toBe(4711);
  expect(examination!.items.map(({ fluency }) => fluency)).toEqual([3, 3, 4]);
  expect(examination!.items.map(({ item }) => item)).toEqual(
    drawItems(programme, examination!.settings, 4711).map(({ id }) => id),
  );
  const asked = examination!.items.map(({ item }) => itemOf(item));
  names.forEach((name, i) =>
    expect(name).toContain(chordText(asked[i]!.note, asked[i]!.chord).name),
  );
  expect(replay(store.log).lastRuns.size).toBe(0);
});

test('a mark can be taken back, a reload comes back to the same chord, and giving up keeps nothing', async () => {
  await begin(99, 2);
  press('uneven');
  await screen.findByText('Examination, 2 of 2');
  press('Back to the one before');
  await screen.findByText('Examination, 1 of 2');
  press('even');
  await screen.findByText('Examination, 2 of 2');
  cleanup();
  show();
  await screen.findByText('Examination, 2 of 2');
  press('Give it up');
  await screen.findByRole('heading', { name: 'Chance to pass' });
  expect(kept()).toEqual([]);
  expect(await store.kept('examination')).toBeUndefined();
});

test('a double tap marks one chord, and the same mark a moment later the next', async () => {
  await begin(99, 3);
  press('even');
  await screen.findByText('Examination, 2 of 3');
  press('even', 150);
  press('even', 1000);
  await screen.findByText('Examination, 3 of 3');
  expect(readDraft(await store.kept('examination'))!.marks).toEqual([3, 3]);
});

test('a double tap on the last chord changes no mark of the result, which has come in its place', async () => {
  await begin(99, 2);
  press('even');
  await screen.findByText('Examination, 2 of 2');
  press('even');
  await screen.findByRole('heading', { name: 'Passed' });
  pressOn(markOf(0, 'stopped'), 150);
  press('Keep the examination', 100);
  expect(markOf(0, 'stopped')).toHaveProperty('checked', false);
  expect(kept()).toEqual([]);
  pressOn(markOf(0, 'stopped'), 1000);
  await screen.findByRole('heading', { name: 'Not passed yet' });
});

test('the same number draws the same again from the list of those held', async () => {
  await begin(4711, 2);
  press('even');
  await screen.findByText('Examination, 2 of 2');
  press('even');
  await screen.findByRole('heading', { name: 'Passed' });
  press('Keep the examination');
  await screen.findByText(/1 of 1 passed/);
  press('Draw 4711 again');
  await screen.findByText(/per cent today/);
  press('Begin');
  await screen.findByText('Examination, 1 of 2');
  const draft = readDraft(await store.kept('examination'))!;
  expect(draft.asked.map(({ item }) => item)).toEqual(kept()[0]!.items.map(({ item }) => item));
});

test('a damaged draft is none', () => {
  expect(readDraft(null)).toBeNull();
  expect(readDraft({ seed: 1, asked: [], marks: [] })).toBeNull();
});
