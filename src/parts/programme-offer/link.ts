/** A programme as the last part of a link: packed, deflated, and in the letters of base64url (RFC 4648, section 5). */
import {
  LONGEST_OFFER,
  OfferError,
  packOffer,
  type ProgrammeOffer,
  unpackOffer,
} from '../../../shared/formats/programme-offer';

/** Characters. */
const LONGEST_CODE = 10_000;
const METHOD = 'deflate-raw';

const cutOff = (): OfferError =>
  new OfferError('This link is not whole. Copy all of it, or ask for the programme as a file.');

async function textOf(stream: ReadableStream<Uint8Array>): Promise<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const reader = stream.getReader();
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    text += decoder.decode(value, { stream: true });
    // A small code can be a very long text; it is not read to its end.
    if (text.length > LONGEST_OFFER) {
      void reader.cancel();
      throw cutOff();
    }
  }
}

export async function codeOf(offer: ProgrammeOffer): Promise<string> {
  const packed = new Blob([packOffer(offer)]).stream().pipeThrough(new CompressionStream(METHOD));
  const bytes = new Uint8Array(await new Response(packed).arrayBuffer());
  const letters = btoa(String.fromCharCode(...bytes));
  return letters.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** Reads the code of a link. Rejects with an OfferError, and with nothing else. */
export async function offerOf(code: string): Promise<ProgrammeOffer> {
  if (code.length > LONGEST_CODE || !/^[\w-]+$/.test(code)) throw cutOff();
  let text: string;
  try {
    const letters = atob(code.replaceAll('-', '+').replaceAll('_', '/'));
    const bytes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
    const inflated = new Blob([bytes]).stream().pipeThrough(new DecompressionStream(METHOD));
    text = await textOf(inflated);
  } catch {
    throw cutOff();
  }
  return unpackOffer(text);
}

/** The whole address, for the page at this one ("https://example.org/app/"). */
export const linkOf = (page: string, code: string): string =>
  new URL(`#/programme/${code}`, page).href;

/** The code in what a person has pasted or scanned: a link to any place where the app lives. Throws an OfferError. */
export function codeIn(text: string): string {
  const found = /#\/programme\/([\w-]+)\s*$/.exec(text.slice(0, 2 * LONGEST_CODE));
  if (found === null) throw new OfferError('This is no link to a programme of Arpeggiary.');
  return found[1]!;
}
