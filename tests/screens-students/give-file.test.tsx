import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { giveFile } from '../../src/parts/give-file';

const CONTENT = new Blob(['a record'], { type: 'application/vnd.arpeggiary.log' });
const downloads: string[] = [];

beforeEach(() => {
  downloads.length = 0;
  vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:here');
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function save(
    this: HTMLAnchorElement,
  ) {
    downloads.push(this.download);
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  Reflect.deleteProperty(navigator, 'canShare');
  Reflect.deleteProperty(navigator, 'share');
});

/** Gives the browser a share sheet that does this. */
function withSheet(canShare: boolean, share: () => Promise<void>) {
  const sheet = vi.fn<(data: ShareData) => Promise<void>>(share);
  Object.assign(navigator, { canShare: () => canShare, share: sheet });
  return sheet;
}

const failing = (name: string) => () => Promise.reject(new DOMException('', name));

describe('a file is handed to the person', () => {
  test('by the share sheet, under its name and kind', async () => {
    const share = withSheet(true, () => Promise.resolve());
    expect(await giveFile(CONTENT, 'ada.arpeggiary')).toBe('shared');
    const [data] = share.mock.calls[0]!;
    expect(data.files?.map(({ name, type }) => [name, type])).toEqual([
      ['ada.arpeggiary', CONTENT.type],
    ]);
    expect(downloads).toEqual([]);
  });

  test('not at all when the person closes the sheet', async () => {
    withSheet(true, failing('AbortError'));
    expect(await giveFile(CONTENT, 'ada.arpeggiary')).toBe('given up');
    expect(downloads).toEqual([]);
  });

  test.each([
    ['without a sheet', () => undefined],
    ['where the sheet takes no such files', () => withSheet(false, failing('TypeError'))],
    [
      'where the sheet refuses them only when asked',
      () => withSheet(true, failing('NotAllowedError')),
    ],
  ])('as a download %s', async (_, prepare) => {
    prepare();
    expect(await giveFile(CONTENT, 'ada.arpeggiary')).toBe('downloaded');
    expect(downloads).toEqual(['ada.arpeggiary']);
  });
});
