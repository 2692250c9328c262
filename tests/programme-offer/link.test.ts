import { deflateRawSync } from 'node:zlib';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { OfferError, packOffer, type ProgrammeOffer } from '../../shared/formats/programme-offer';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { codeIn, codeOf, linkOf, offerOf } from '../../src/parts/programme-offer/link';
import { dotsOf, readDots } from '../../src/parts/programme-offer/qr';
import { seededNumbers, spoil } from '../formats/spoil';

const OFFER: ProgrammeOffer = {
  programme: { ...DEFAULT_PROGRAMME, requirements: 'From memory, legato; “piano” and forte.' },
  name: 'Ada',
};
const PAGE = 'https://example.org/studio/arpeggiary/#/settings';

const refusal = async (code: string): Promise<string> => {
  const error: unknown = await offerOf(code).catch((reason: unknown) => reason);
  expect(error).toBeInstanceOf(OfferError);
  return (error as OfferError).message;
};

/** RFC 4648, section 5, by Node's own encoder. */
const coded = (text: string): string => deflateRawSync(text).toString('base64url');

/** A camera's picture: every dot eight pixels wide, RGBA. */
function pictureOf(dots: readonly (readonly boolean[])[], scale = 8) {
  const side = dots.length * scale;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      if (dots[Math.floor(y / scale)]![Math.floor(x / scale)]) {
        data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
      }
    }
  }
  return { data, width: side, height: side };
}

describe('a link', () => {
  it('leads to the programme, and is inflated by another program as well', async () => {
    const code = await codeOf(OFFER);
    expect(await offerOf(code)).toEqual(OFFER);
    expect(await offerOf(coded(packOffer(OFFER)))).toEqual(OFFER);
    const link = linkOf(PAGE, code);
    expect(link).toMatch(/^https:\/\/example\.org\/studio\/arpeggiary\/#\/programme\/[\w-]+$/);
    expect(codeIn(` ${link}\n`)).toBe(code);
  });

  it('of a usual programme is short', async () => {
    const code = await codeOf({ programme: DEFAULT_PROGRAMME, name: null });
    expect(code.length).toBeLessThan(100);
  });

  it.each([
    ['cut off', coded(packOffer(OFFER)).slice(0, -9)],
    ['nothing', ''],
    ['other signs', 'a/b+c='],
    ['too long', 'a'.repeat(10_001)],
    // Deflate makes a thousandth of a long run of the same letter.
    ['a small code of a long text', coded('['.repeat(5_000_000))],
    ['no text', deflateRawSync(new Uint8Array([0xff, 0xfe])).toString('base64url')],
  ])('%s is refused as not whole', async (_, code) => {
    expect(await refusal(code)).toMatch(/not whole/);
  });

  it('that holds something else is refused as what it is', async () => {
    expect(await refusal(coded('[1]'))).toMatch(/no programme/);
    expect(await refusal(coded('[7]'))).toMatch(/later version/);
    expect(() => codeIn('https://example.org/#/map/together.4')).toThrow(OfferError);
  });

  it('10,000 spoilt links: read or refused, never anything else', async () => {
    const numbers = seededNumbers(20_261_127);
    const code = await codeOf(OFFER);
    const outcomes = new Set<string>();
    for (let i = 0; i < 10_000; i++) {
      // One in five is spoilt before it is deflated, so that the faults lie within.
      const isWithin = i % 5 === 0;
      const spoilt = isWithin ? coded(spoil(packOffer(OFFER), numbers)) : spoil(code, numbers);
      try {
        const link = `${linkOf(PAGE, '')}${spoilt}`;
        await offerOf(codeIn(link));
        outcomes.add('read');
      } catch (error) {
        outcomes.add(error instanceof OfferError ? 'refused' : `${String(error)}: ${spoilt}`);
      }
    }
    expect(outcomes).toEqual(new Set(['read', 'refused']));
  });
});

describe('the QR code of a link', () => {
  it('is read back by an independent decoder and by our own', async () => {
    for (const requirements of ['', 'From memory. '.repeat(20), 'aé𝄞 '.repeat(60)]) {
      const link = linkOf(
        PAGE,
        await codeOf({ ...OFFER, programme: { ...OFFER.programme, requirements } }),
      );
      const picture = pictureOf(dotsOf(link)!);
      expect(jsQR(picture.data, picture.width, picture.height)?.data).toBe(link);
      expect(readDots(picture as ImageData, 2000)).toBe(link);
    }
  });

  it('has the quiet margin of four dots that ISO/IEC 18004 asks for', async () => {
    const dots = dotsOf(linkOf(PAGE, await codeOf(OFFER)))!;
    const margin = [...dots.slice(0, 4), ...dots.slice(-4), ...dots.map((row) => row.slice(0, 4))];
    expect(margin.flat()).not.toContain(true);
    expect(dots[4]![4]).toBe(true);
  });

  it('is not made of a link that cameras could not read from a screen', () => {
    expect(dotsOf('x'.repeat(1274))).toBeNull();
    // ISO/IEC 18004, table 1: version 25 has 117 modules a side; the margin has four on each.
    expect(dotsOf('x'.repeat(1273))).toHaveLength(117 + 2 * 4);
  });

  it('is not found in a picture without one', () => {
    const blank = { data: new Uint8ClampedArray(200 * 200 * 4).fill(255), width: 200, height: 200 };
    expect(readDots(blank as ImageData, 2000)).toBeNull();
  });
});
