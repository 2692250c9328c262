/**
 * A score as engraved music, as large as fits into the box that the page gives it; it never scrolls. Where not all fits,
 * it turns by itself: see slotsAt.
 *
 * <Staff score={score} from={0} to={288} at={72} description="D, F sharp, A, up and down" />
 *
 * `heard` lights the notes that have been heard, as they come. All places are in parts of a beat (placeOfStep makes one of a step). Its element fills its parent, which must have a
 * height of its own, so that nothing jumps when the music appears.
 */
import { effect, type ReadonlySignal } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Box, pageOf, slotsAt, systemAt } from '../../../shared/music/engraving/page';
import type { Hands } from '../../../shared/music/deck';
import type { Score } from '../../../shared/music/score';
import { drawSlots, type HeardPlaces, lightUp, markAt } from './slots';
import styles from './staff.module.css';

interface StaffProps {
  readonly score: Score;
  /** Only the notes from here … */
  readonly from?: number;
  /** … to before here. */
  readonly to?: number;
  /** The place that sounds now, to be marked and to be seen; null while nothing sounds. */
  readonly at: number | null;
  /** Only what these hands play is marked. */
  readonly hands?: Hands;
  readonly heard?: ReadonlySignal<HeardPlaces>;
  /** The notes in words, for those who don't see them; the score's title is said before. */
  readonly description: string;
}

type Engraver = typeof import('./engrave');

/** The engraver, when its font is there too. A second call gets the same. */
async function loadEngraver(): Promise<Engraver> {
  const [engraver] = await Promise.all([
    import('./engrave'),
    document.fonts.load("40px 'Arpeggiary Music'", '\uE050'),
  ]);
  return engraver;
}

export function Staff(props: StaffProps) {
  const { score, from, to, at, hands = 'together', heard, description } = props;
  const frame = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const box = useBox(frame);
  const engraver = useEngraver();
  const page = useMemo(() => box && pageOf(score, box, from, to), [score, from, to, box]);
  const count = page?.systems.length ?? 0;
  const shown = page ? slotsAt(systemAt(page.systems, at), page.slots, count).join(' ') : '';

  useEffect(() => {
    if (page && box && engraver !== 'failed' && engraver) {
      drawSlots(sheet.current!, engraver.drawSystem, page, shown.split(' ').map(Number), box);
    }
  }, [page, box, engraver, shown]);
  useEffect(() => markAt(sheet.current!, at, hands), [at, hands, page, box, engraver, shown]);
  // Straight into the drawing: a note lights up with the next frame.
  useEffect(
    () => heard && effect(() => lightUp(sheet.current!, heard.value)),
    [heard, page, box, engraver, shown],
  );

  const label = [score.title, description].filter((words) => words !== '').join('. ');
  return (
    <div ref={frame} class={styles.staff} role="img" aria-label={label}>
      <div ref={sheet} class={styles.sheet} aria-hidden="true" />
      {engraver === 'failed' && <p class={styles.failed}>The music could not be drawn.</p>}
    </div>
  );
}

function useEngraver(): Engraver | 'failed' | null {
  const [engraver, setEngraver] = useState<Engraver | 'failed' | null>(null);
  useEffect(() => {
    let isWanted = true;
    const set = (value: Engraver | 'failed') => isWanted && setEngraver(value);
    loadEngraver().then(set, () => set('failed'));
    return () => {
      isWanted = false;
    };
  }, []);
  return engraver;
}

/** The inner size of an element in whole px; null until it has one. */
function useBox(element: { readonly current: Element | null }): Box | null {
  const [box, setBox] = useState<Box | null>(null);
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      const width = Math.floor(entry!.contentRect.width);
      const height = Math.floor(entry!.contentRect.height);
      setBox(width > 0 && height > 0 ? { width, height } : null);
    });
    observer.observe(element.current!);
    return () => observer.disconnect();
  }, [element]);
  return box;
}
