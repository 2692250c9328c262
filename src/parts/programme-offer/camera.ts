/**
 * The camera, which looks for a QR code. The browser asks the person when it is opened, so only ever in answer to a
 * button. No frame outlives the moment in which it is looked at.
 */
import { textInFrame } from './scan';

/** Why there is no camera: the person or the browser said no, or there is none that can be opened. */
export type CameraFault = 'refused' | 'missing';

/** A code fills a part of the frame only, and its dots want two or three pixels each. */
const WISHED: MediaStreamConstraints = {
  video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } },
};
/** Milliseconds between two looks: the hand has moved by then, and the processor has rested. */
const PAUSE = 120;

export async function openCamera(): Promise<MediaStream | CameraFault> {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (devices === undefined) return 'missing';
  try {
    return await devices.getUserMedia(WISHED);
  } catch (error) {
    return isRefusal(error) ? 'refused' : 'missing';
  }
}

const isRefusal = (error: unknown): boolean =>
  error instanceof DOMException && ['NotAllowedError', 'SecurityError'].includes(error.name);

export function closeCamera(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

/** Looks at frame after frame until there is a code in one, or until it is stopped by the function that it returns. */
export function lookForCode(video: HTMLVideoElement, onText: (text: string) => void): () => void {
  let isStopped = false;
  let timer: ReturnType<typeof setTimeout>;
  const look = async () => {
    const text = await textInFrame(video);
    if (isStopped) return;
    if (text === null) timer = setTimeout(() => void look(), PAUSE);
    else onText(text);
  };
  void look();
  return () => {
    isStopped = true;
    clearTimeout(timer);
  };
}
