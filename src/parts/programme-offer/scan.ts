/** Reads a QR code in a picture: by the browser where it can, by a small decoder elsewhere. */

/** Not in TypeScript's DOM types. */
interface BarcodeReader {
  detect(picture: ImageBitmap): Promise<readonly { readonly rawValue: string }[]>;
}
type Readers = { BarcodeDetector?: new (options: { formats: string[] }) => BarcodeReader };

/** Pixels of the longer side: cameras give ten times more, which takes long and tells nothing new. */
const LONGEST_SIDE = 1600;
/** Milliseconds for a picture, and for a frame of a camera that soon gives another. */
const FOR_PICTURE = 2000;
const FOR_FRAME = 150;

async function byBrowser(picture: ImageBitmap): Promise<string | null> {
  const { BarcodeDetector } = globalThis as Readers;
  if (BarcodeDetector === undefined) return null;
  try {
    const found = await new BarcodeDetector({ formats: ['qr_code'] }).detect(picture);
    return found[0]?.rawValue ?? null;
  } catch {
    return null; // It is there, but not on this system.
  }
}

async function byDecoder(picture: ImageBitmap, timeLimit: number): Promise<string | null> {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const [width, height] = [picture.width, picture.height].map((side) => Math.ceil(side * scale));
  const canvas = new OffscreenCanvas(width!, height!);
  const context = canvas.getContext('2d')!;
  context.drawImage(picture, 0, 0, width!, height!);
  const { readDots } = await import('./qr');
  return readDots(context.getImageData(0, 0, width!, height!), timeLimit);
}

async function textIn(source: ImageBitmapSource, timeLimit: number): Promise<string | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(source);
  } catch {
    return null; // No picture at all, or none yet.
  }
  const text = (await byBrowser(picture)) ?? (await byDecoder(picture, timeLimit));
  picture.close();
  return text;
}

/** The text of the QR code in a picture; null if there is none that can be read. */
export const textInPicture = (file: Blob): Promise<string | null> => textIn(file, FOR_PICTURE);

/** The same of what a camera shows at this moment. */
export const textInFrame = (video: HTMLVideoElement): Promise<string | null> =>
  textIn(video, FOR_FRAME);
