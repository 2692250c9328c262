/** Reads a QR code in a picture: by the browser where it can, by a small decoder elsewhere. */

/** Not in TypeScript's DOM types. */
interface BarcodeReader {
  detect(picture: ImageBitmap): Promise<readonly { readonly rawValue: string }[]>;
}
type Readers = { BarcodeDetector?: new (options: { formats: string[] }) => BarcodeReader };

/** Pixels of the longer side: cameras give ten times more, which takes long and tells nothing new. */
const LONGEST_SIDE = 1600;

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

async function byDecoder(picture: ImageBitmap): Promise<string | null> {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const [width, height] = [picture.width, picture.height].map((side) => Math.ceil(side * scale));
  const canvas = new OffscreenCanvas(width!, height!);
  const context = canvas.getContext('2d')!;
  context.drawImage(picture, 0, 0, width!, height!);
  const { readDots } = await import('./qr');
  return readDots(context.getImageData(0, 0, width!, height!));
}

/** The text of the QR code in a picture; null if there is none that can be read. */
export async function textInPicture(file: Blob): Promise<string | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null; // No picture at all.
  }
  const text = (await byBrowser(picture)) ?? (await byDecoder(picture));
  picture.close();
  return text;
}
