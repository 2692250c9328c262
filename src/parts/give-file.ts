/** Hands a file to the person: by the system's way of sharing where it takes such files, as a download elsewhere. */
import { download } from './download';

export type Given = 'shared' | 'downloaded' | 'given up';

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : '');

/** To be called soon after a tap, or the browser may refuse to share; then it is a download. */
export async function giveFile(content: Blob, name: string): Promise<Given> {
  const file = new File([content], name, { type: content.type });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: name });
      return 'shared';
    } catch (error) {
      if (nameOf(error) === 'AbortError') return 'given up';
      // Chromium says only now that it does not share files of this kind.
    }
  }
  download(content, name);
  return 'downloaded';
}
