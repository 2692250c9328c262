/** The camera as a person meets it: asked for by a button only, closed at once, and told why where it cannot be had. */
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { CameraScan } from '../../src/parts/programme-offer/camera-scan';

const stop = vi.fn<() => void>();
const stream = Object.assign(new MediaStream(), {
  getTracks: () => [{ stop }],
}) as unknown as MediaStream;
const ask = vi.fn<(constraints: MediaStreamConstraints) => Promise<MediaStream>>();
const onText = vi.fn<(text: string) => void>();
/** What the browser's own reader of codes finds. */
let inFrame: readonly { readonly rawValue: string }[] = [];

beforeEach(() => {
  inFrame = [];
  ask.mockReset().mockResolvedValue(stream);
  stop.mockClear();
  onText.mockReset();
  vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: ask } });
  vi.stubGlobal('createImageBitmap', () => Promise.resolve({ close: () => undefined }));
  vi.stubGlobal('BarcodeDetector', function reader() {
    return { detect: () => Promise.resolve(inFrame) };
  });
  // Without a code the decoder is asked, which finds none either.
  vi.stubGlobal('OffscreenCanvas', function canvas() {
    return { getContext: () => ({ drawImage: () => undefined, getImageData: () => ({}) }) };
  });
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = () => render(<CameraScan onText={onText} />);
const open = () => fireEvent.click(screen.getByRole('button', { name: 'Read it with the camera' }));

test('is not asked for before the button, nor for sound, and is closed when a code is found', async () => {
  show();
  expect(ask).not.toHaveBeenCalled();
  inFrame = [{ rawValue: 'https://example.org/#/programme/abc' }];
  open();
  await waitFor(() => expect(onText).toHaveBeenCalledExactlyOnceWith(inFrame[0]!.rawValue));
  expect(ask.mock.calls[0]![0]).not.toHaveProperty('audio');
  await waitFor(() => expect(stop).toHaveBeenCalledTimes(1));
  expect(screen.queryByLabelText('What the camera sees')).toBeNull();
});

test.each([
  ['the person', () => fireEvent.click(screen.getByRole('button', { name: 'Close the camera' }))],
  [
    'hiding the page',
    () => {
      vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
      document.dispatchEvent(new Event('visibilitychange'));
      vi.restoreAllMocks();
    },
  ],
  ['leaving the screen', () => cleanup()],
])('is closed by %s', async (_, close) => {
  show();
  open();
  await screen.findByText(/No picture is kept or sent/);
  expect(stop).not.toHaveBeenCalled();
  close();
  await waitFor(() => expect(stop).toHaveBeenCalledTimes(1));
  expect(onText).not.toHaveBeenCalled();
});

test('that is allowed only after it has been given up is closed at once', async () => {
  let allow: ((given: MediaStream) => void) | undefined;
  ask.mockReturnValue(
    new Promise((resolve) => {
      allow = resolve;
    }),
  );
  show();
  open();
  fireEvent.click(await screen.findByRole('button', { name: 'Close the camera' }));
  allow!(stream);
  await waitFor(() => expect(stop).toHaveBeenCalledTimes(1));
});

test.each([
  ['NotAllowedError', /not allowed here. Allow it/],
  ['NotFoundError', /No camera can be opened here/],
  ['NotReadableError', /perhaps another program has it/],
])('after %s says what to do, and can be tried again', async (name, words) => {
  ask.mockRejectedValue(new DOMException('', name));
  show();
  open();
  expect((await screen.findByRole('alert')).textContent).toMatch(words);
  ask.mockResolvedValue(stream);
  open();
  await screen.findByText(/No picture is kept or sent/);
  expect(screen.queryByRole('alert')).toBeNull();
});
