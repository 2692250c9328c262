/**
 * The key of the next arpeggio at the end of a system, where it begins the next one, so that it does not come by surprise:
 * after the clef, if that changes, and after the line of the join (common practice in engraving, no source).
 */
import type { SVGContext } from 'vexflow/core';
import type { EngravedSystem } from '../../../shared/music/engraving/engraving';
import type { PrintedKey } from '../../../shared/music/engraving/signature';
import { SPACE } from './drawing';
import { drawKey, keyWidth } from './key';
import { linesAt, type StaffNotes } from './notes';

/** Between the line of the join and the key. */
const BEFORE_KEY = 0.6 * SPACE;

/** What it takes behind the line of the join; nothing where the key stays or where the system ends elsewhere. */
export function nextKeyWidth({ nextJoin }: EngravedSystem): number {
  const width = nextJoin ? keyWidth(nextJoin.key) : 0;
  return width === 0 ? 0 : BEFORE_KEY + width;
}

/** Draws the key, and the lines of the staff under it, behind the end of a staff. */
export function drawNextKey(
  context: SVGContext,
  group: Element,
  { staff, stave, notes }: StaffNotes,
  key: PrintedKey,
): void {
  const end = stave.getX() + stave.getWidth();
  linesAt(end, BEFORE_KEY + keyWidth(key))
    .setContext(context)
    .drawWithStyle();
  drawKey(group, key, staff.nextClef ?? notes.at(-1)!.source.reading.clef, end + BEFORE_KEY);
}
