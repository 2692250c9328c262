/** The systems on the sheet: each slot holds one, which stays as it is until the slot has to show another. */
import type { EngravedSystem } from '../../../shared/music/engraving/engraving';
import type { Box, Page } from '../../../shared/music/engraving/page';
import type { Hands } from '../../../shared/music/deck';
import { includesHand } from '../../../shared/music/playing';
import type { Hand } from '../../../shared/music/fingering/types';
import type { DrawnSystem, Mark } from './engrave';
import type { Light } from './lights';

type DrawSystem = (system: EngravedSystem, width: number) => DrawnSystem;

/** What is drawn on a sheet, by its elements, so that a system is drawn once only. */
const drawnSystems = new WeakMap<EngravedSystem, DrawnSystem>();
const marksOf = new WeakMap<Element, readonly Mark[]>();
const lightsOf = new WeakMap<Element, readonly Light[]>();

/** Puts the systems with the indices `shown` on the sheet, from top to bottom. */
export function drawSlots(
  sheet: HTMLElement,
  draw: DrawSystem,
  { systems, space }: Page,
  shown: readonly number[],
  box: Box,
): void {
  const drawn = shown.map((index) => {
    const system = systems[index]!;
    const known = drawnSystems.get(system) ?? draw(system, box.width / space);
    drawnSystems.set(system, known);
    return known;
  });
  const height = drawn.reduce((sum, system) => sum + system.height, 0);
  // The heights were estimated from above; if a drawing is higher all the same, all get a little smaller.
  const scale = Math.min(space, box.height / height);
  drawn.forEach(({ svg, height: own, marks, lights }) => {
    svg.style.height = `${own * scale}px`;
    marksOf.set(svg, marks);
    lightsOf.set(svg, lights);
  });
  sheet.replaceChildren(...drawn.map(({ svg }) => svg));
}

/** Marks what sounds at `place` in the hands that are heard, and nothing else. */
export function markAt(sheet: HTMLElement, place: number | null, hands: Hands): void {
  for (const svg of sheet.children) {
    for (const { from, to, hand, elements } of marksOf.get(svg) ?? []) {
      const isHeard = hand === null || includesHand(hands, hand);
      const isNow = isHeard && place !== null && place >= from && place < to;
      for (const element of elements) element.classList.toggle('now', isNow);
    }
  }
}

/** Places, in parts of a beat, at which a note of each hand has been heard. */
export type HeardPlaces = Readonly<Record<Hand, ReadonlySet<number>>>;

/** Lights the notes that have been heard, and no others. */
export function lightUp(sheet: HTMLElement, heard: HeardPlaces): void {
  for (const svg of sheet.children) {
    for (const { hand, place, discs } of lightsOf.get(svg) ?? []) {
      for (const disc of discs) disc.classList.toggle('lit', heard[hand].has(place));
    }
  }
}
