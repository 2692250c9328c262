/** The engraved staff in a real browser, under the app's own content security policy. */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ItemId, itemOf } from '../../shared/music/deck';
import type { ScoreNote } from '../../shared/music/score';
import { sequenceOf } from '../../shared/music/sequence';
import { fingered, note, score } from '../formats/scores';
import type { Ink, ItemShowing } from '../screens-staff/harness';
import { browseHarness } from './browse';

const BEAT = 24;
const HEAD = '\uE0A4';
const isFinger = ({ what }: Ink): boolean => what >= '\uED11' && what <= '\uED15';
const isAccidental = ({ what }: Ink): boolean => what >= '\uE260' && what <= '\uE264';
/** Half a pixel, for rounding. */
const ALMOST = 0.5;

const harness = browseHarness('tests/screens-staff/harness.tsx');
/** One for all: it is the box in it that changes. */
let page: Page;

beforeAll(async () => {
  page = await harness.browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(harness.url);
});

async function show(showing: ItemShowing): Promise<void> {
  await page.evaluate((asked) => window.staffHarness.showItems(asked), showing);
  await page.waitForFunction(
    ({ width, height }) => {
      const box = document.querySelector('#box')!.getBoundingClientRect();
      return box.width === width && box.height === height && document.querySelector('#box svg');
    },
    { width: showing.width, height: showing.height },
  );
  // Two frames: one for the observed size, one for the drawing that follows from it.
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
}

const inks = () => page.evaluate(() => window.staffHarness.inks());
const systems = () => page.locator('#box svg');
const nowOf = (selector: string) => page.locator(`#box ${selector}`).count();

const meet = (a: Ink, b: Ink): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const ITEMS: readonly ItemId[] = [
  'c.major-53.together.4',
  'gb.major-53.together.4',
  'eb.minor-53.together.4',
  'd.dominant-42.together.4',
  'c.diminished-7.together.4',
];
const BOXES = [
  { width: 1024, height: 600 },
  { width: 390, height: 700 },
  { width: 1440, height: 760 },
];

describe.each(BOXES)('in a box of $width x $height', (box) => {
  it.each(ITEMS)('shows every note of %s within it, and nothing on top of another', async (id) => {
    await show({ ...box, items: [id], pedal: true, grouping: 4 });
    const all = await inks();
    const steps = sequenceOf(itemOf(id)).length;
    expect(all.filter(({ what }) => what === HEAD)).toHaveLength(2 * steps);
    expect(all.filter(isFinger)).toHaveLength(2 * steps);

    const outside = all.filter(
      ({ left, top, right, bottom }) =>
        left < -ALMOST ||
        top < -ALMOST ||
        right > box.width + ALMOST ||
        bottom > box.height + ALMOST,
    );
    expect(outside).toEqual([]);

    const signs = all.filter((ink) => ink.what === HEAD || isFinger(ink) || isAccidental(ink));
    const clashes = signs.flatMap((a, i) => signs.slice(i + 1).filter((b) => meet(a, b)));
    expect(clashes).toEqual([]);
    expect(await page.evaluate(() => window.staffHarness.violations)).toEqual([]);
  });
});

/** All that a drill may hold. */
const drillOf = (low: string, top: string): readonly ScoreNote[] => [
  ...[18, 6, 16, 8].map((length) => ({ ...fingered(low, length, 1), isAccented: true })),
  fingered(`${low} ${top}`, 24, 1, 5),
  note('', 24),
  { ...fingered(low, 24, 1), isSilent: true },
  { ...fingered(top, 42, 5), overlap: 4 },
  fingered(top, 54, 5),
  note('', 144),
];

describe('a drill', () => {
  it('is drawn with all its signs, within the box and none on another', async () => {
    const box = { width: 1024, height: 420 };
    await page.evaluate(([made, size]) => window.staffHarness.show(made, size), [
      score(drillOf('D4', 'Bb4'), drillOf('C#3', 'A3')),
      { ...box, at: null },
    ] as const);
    await page.waitForFunction(() => document.querySelector('#box svg .word') !== null);
    const all = await inks();
    const count = (what: string) => all.filter((ink) => ink.what === what).length;
    // Noteheads: black and, with a cross, silent ones; and the minim of the last note, tied from before the beat.
    expect([count(HEAD), count('\uE0A9'), count('\uE0A3')]).toEqual([18, 2, 2]);
    expect(all.filter(isFinger)).toHaveLength(18);
    expect([count('\uE4A0'), count('\uE883'), count('legatissimo')]).toEqual([8, 2, 2]);
    const outside = all.filter(
      ({ left, top, right, bottom }) =>
        left < -ALMOST ||
        top < -ALMOST ||
        right > box.width + ALMOST ||
        bottom > box.height + ALMOST,
    );
    expect(outside).toEqual([]);
    const signs = all.filter(
      (ink) =>
        ink.what === HEAD || isFinger(ink) || isAccidental(ink) || ink.what === 'legatissimo',
    );
    expect(signs.flatMap((a, i) => signs.slice(i + 1).filter((b) => meet(a, b)))).toEqual([]);
  });
});

describe('the staff', () => {
  it('is drawn with its own font, whose notehead is 1.18 spaces wide', async () => {
    await show({ width: 1024, height: 600, items: ['c.major-53.together.4'] });
    const width = await page.evaluate(() => {
      const measure = document.createElement('canvas').getContext('2d')!;
      measure.font = "40px 'Arpeggiary Music'";
      return measure.measureText('\uE0A4').width;
    });
    expect(width).toBeCloseTo(11.8, 1);
  });

  it('is one picture with words for those who do not see it', async () => {
    await show({ width: 1024, height: 600, items: ['c.major-53.right.2'] });
    const picture = page.getByRole('img', { name: 'An arpeggio. up and down' });
    expect(await picture.count()).toBe(1);
    expect(await page.locator('#box [aria-hidden="true"] svg').count()).toBe(1);
  });

  it('marks only the hand that is heard', async () => {
    const items = ['c.major-53.together.4'] as const;
    for (const hands of ['left', 'right', 'together'] as const) {
      await show({ width: 1024, height: 600, items, at: BEAT, hands });
      expect(await nowOf('.now .vf-notehead')).toBe(hands === 'together' ? 2 : 1);
      expect(await nowOf('rect.now')).toBe(1);
    }
  });

  it('lights the notes of each hand that have been heard, behind their heads, and no others', async () => {
    const showing = { width: 1024, height: 600, items: ['c.major-53.together.4'] as const };
    const heard = { right: [0, 6, 12], left: [6] };
    await show({ ...showing, heard });
    expect(await nowOf('.lit')).toBe(4);
    const isBehind = await page.evaluate(() =>
      [...document.querySelectorAll('#box .lit')].map((lamp) => {
        const head = lamp.parentElement!.querySelector('.vf-notehead')!;
        const [a, b] = [lamp.getBoundingClientRect(), head.getBoundingClientRect()];
        const isAround = Math.abs(a.x + a.width / 2 - b.x - b.width / 2) < 1;
        return isAround && lamp === lamp.parentElement!.firstElementChild;
      }),
    );
    expect(isBehind).toEqual([true, true, true, true]);
    await show({ ...showing, heard: { right: [0], left: [] } });
    expect(await nowOf('.lit')).toBe(1);
    await show(showing);
    expect(await nowOf('.lit')).toBe(0);
  });

  it('marks what sounds now in both hands, and draws nothing anew for that', async () => {
    const showing = { width: 1024, height: 600, items: ['c.major-53.together.4'] as const };
    await show({ ...showing, at: null });
    expect(await nowOf('.now')).toBe(0);
    const svg = await systems().first().elementHandle();
    await show({ ...showing, at: BEAT });
    expect(await nowOf('.now .vf-notehead')).toBe(2);
    expect(await nowOf('rect.now')).toBe(1);
    expect(
      await systems()
        .first()
        .evaluate((now, before) => now === before, svg),
    ).toBe(true);
  });

  it('turns by itself, a system at a time, without moving the one that is played', async () => {
    const showing = {
      width: 1024,
      height: 480,
      items: ['d.major-53.together.4', 'd.minor-53.together.4', 'd.major-6.together.4'] as const,
    };
    await show({ ...showing, at: 0 });
    expect(await systems().count()).toBe(2);
    const [first, second] = await systems().elementHandles();
    const isThere = (svg: typeof first) => svg!.evaluate((element) => element.isConnected);
    let at = 0;
    while ((await isThere(first)) && at < 18 * BEAT) await show({ ...showing, at: (at += BEAT) });
    expect(await isThere(second)).toBe(true);
    expect(
      await second!.evaluate(
        (svg) => (svg as Element).querySelectorAll('.now .vf-notehead').length,
      ),
    ).toBe(2);
    expect(
      await systems()
        .nth(1)
        .evaluate((now, before) => now === before, second),
    ).toBe(true);
  });

  it('is set anew in a box of another size', async () => {
    const items = ['d.dominant-7.together.4'] as const;
    await show({ width: 1024, height: 600, items });
    const wide = await systems().count();
    await show({ width: 390, height: 600, items });
    expect(await systems().count()).toBeGreaterThan(wide);
  });
});
