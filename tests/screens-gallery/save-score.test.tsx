import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact';
import { parseMidi } from 'midi-file';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { roundItems } from '../../shared/music/deck';
import { roundNotes } from '../../shared/music/sequence';
import { Notice } from '../../src/parts/notice/notice';
import { SaveScore } from '../../src/parts/save-score/save-score';
import { ItemScreen } from '../../src/screens/item/item-screen';
import { StoreContext } from '../../src/store-context';
import { notesIn } from '../formats/musicxml-reader';
import { fakeStore } from '../screens/fake-store';

/** What was handed to the person: names and contents. */
const saved: { name: string; file: Blob }[] = [];

beforeEach(() => {
  saved.length = 0;
  let last: Blob;
  vi.stubGlobal('scrollTo', () => undefined);
  vi.spyOn(URL, 'createObjectURL').mockImplementation((file) => {
    last = file as Blob;
    return 'blob:here';
  });
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function save(
    this: HTMLAnchorElement,
  ) {
    saved.push({ name: this.download, file: last });
  });
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

test('an item and its whole round are saved for notation and to be played', async () => {
  const store = fakeStore([{ kind: 'programme', programme: DEFAULT_PROGRAMME }]);
  render(
    <StoreContext.Provider value={store}>
      <ItemScreen argument="d.major-6.right.2" />
    </StoreContext.Provider>,
  );
  const round = within(
    screen.getByRole('group', { name: 'Save the whole round from D', hidden: true }),
  );
  fireEvent.click(round.getByRole('button', { name: 'as MIDI file', hidden: true }));
  await waitFor(() => expect(saved).toHaveLength(1));
  fireEvent.click(round.getByRole('button', { name: 'as MusicXML', hidden: true }));
  await waitFor(() => expect(saved).toHaveLength(2));
  const item = within(screen.getByRole('group', { name: 'Save these notes', hidden: true }));
  fireEvent.click(item.getByRole('button', { name: 'as MusicXML', hidden: true }));
  await waitFor(() => expect(saved).toHaveLength(3));
  expect(saved.map(({ name }) => name)).toEqual([
    'round-d-right-2.mid',
    'round-d-right-2.musicxml',
    'd-major-6-right-2.musicxml',
  ]);

  const count = roundNotes(roundItems('d', 'right.2'));
  const midi = parseMidi(new Uint8Array(await saved[0]!.file.arrayBuffer()));
  expect(midi.tracks[1]!.filter(({ type }) => type === 'noteOn')).toHaveLength(count);
  const written = notesIn(await saved[1]!.file.text(), 'right');
  // The last note of all lasts a beat, which the bar may part: a tied note is written twice.
  expect(written.filter(({ pitch, tie }) => pitch && tie?.type !== 'stop')).toHaveLength(count);
  expect(notesIn(await saved[2]!.file.text(), 'right').filter(({ pitch }) => pitch)).toHaveLength(
    13,
  );
});

test('what cannot be made is said, and nothing is saved', async () => {
  render(
    <>
      <Notice />
      <SaveScore
        what="this drill"
        fileName="drill"
        scoreOf={() => {
          throw new RangeError('no such drill');
        }}
      />
    </>,
  );
  fireEvent.click(screen.getByRole('button', { name: 'as MusicXML' }));
  await screen.findByText(/could not be made/);
  expect(saved).toEqual([]);
});
