import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { eventLines, headerLine, previewOf } from '../../shared/formats/backup';
import { BackupReader } from '../../shared/formats/backup-reader';
import type { Outcome } from '../../shared/formats/kept';
import type { LogEvent } from '../../shared/log/events';
import { OpenFile } from '../../src/parts/open-file/open-file';
import { StoreContext } from '../../src/store-context';
import { SAMPLES } from '../formats/samples';
import { fakeStore } from '../screens/fake-store';

const kept = Object.values<LogEvent>(SAMPLES).map((event) => {
  return { id: event.id, student: event.student, event };
});

/** What taking in the samples would do where the first so many of them are damaged and all others whole. */
function previewWith(damaged: number) {
  const reader = new BackupReader();
  reader.push(headerLine(0, kept.length) + eventLines(kept));
  const events = new Map(
    kept.map(({ id }, i): [string, Outcome] => [id, i < damaged ? 'damaged' : 'ok']),
  );
  return previewOf(reader.end(), { events, names: new Map() });
}

afterEach(cleanup);

const madeOn = () => screen.getByText('Made on').parentElement!.textContent;

/** What is told before and after. `look` sees the dialog. */
async function takeIn(
  damaged: number,
  look = (): void => undefined,
): Promise<readonly [string, string]> {
  const store = fakeStore([]);
  store.previewBackup = async () => previewWith(damaged);
  store.restore = async () => undefined;
  const onTakenIn = vi.fn<(said: string) => void>();
  render(
    <StoreContext.Provider value={store}>
      <OpenFile onTakenIn={onTakenIn} file={new File(['a record'], 'x.arpeggiary')} />
    </StoreContext.Provider>,
  );
  await screen.findByText('Take this in?');
  look();
  const told = screen.getByText('Not yet here').closest('dl')!.textContent;
  fireEvent.click(screen.getByText('Take in'));
  await vi.waitFor(() => expect(onTakenIn).toHaveBeenCalledOnce());
  return [told, onTakenIn.mock.calls[0]![0]];
}

test('how many damaged records a file has whole is told before and after taking it in', async () => {
  const [told, said] = await takeIn(3);
  expect(told).toContain('Damaged here3, whole in this file');
  expect(said).toBe('Taken in. 3 damaged records are whole again.');
  cleanup();
  expect(await takeIn(1)).toEqual([
    expect.stringContaining('Damaged here1, whole in this file'),
    'Taken in. One damaged record is whole again.',
  ]);
});

test('where nothing is damaged, nothing is said of it', async () => {
  const [told, said] = await takeIn(0);
  expect(told).not.toContain('amaged');
  expect(said).toBe('Taken in.');
});

test('the day on which a file was made is that of the place where it is opened', async () => {
  const home = process.env['TZ'];
  process.env['TZ'] = 'America/New_York';
  try {
    // Made at midnight UTC of 1 January 1970.
    await takeIn(0, () => expect(madeOn()).toBe('Made on31 December 1969'));
  } finally {
    if (home === undefined) delete process.env['TZ'];
    else process.env['TZ'] = home;
  }
});
