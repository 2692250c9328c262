/**
 * The frame of every screen but the one on the music stand: emblem, ways to the other screens, title.
 *
 * <Page title="Map" lit={['d', 'f']}>…</Page>
 *
 * The title takes the focus when the screen is opened. `isWide` gives tables the whole width; `note` is a line under
 * the title.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { StartingNote } from '../../../shared/music/deck';
import { hrefOf, route, type ScreenName } from '../../route';
import { KeyboardStrip } from '../keyboard/keyboard-strip';
import styles from './page.module.css';
import { Whose, WhoseName } from './whose';

interface PageProps {
  readonly title: string;
  readonly note?: ComponentChildren;
  readonly lit?: readonly StartingNote[];
  readonly isWide?: boolean;
  readonly children: ComponentChildren;
}

const LINKS: readonly (readonly [ScreenName, string])[] = [
  ['today', 'Today'],
  ['map', 'Map'],
  ['report', 'Report'],
  ['settings', 'Settings'],
  ['help', 'Help'],
];
/** Screens that say themselves whose they are, or are about all. */
const NAMED: ReadonlySet<ScreenName> = new Set(['report', 'studio']);
const NO_NOTES: readonly StartingNote[] = [];

export function Page({ title, note, lit = NO_NOTES, isWide = false, children }: PageProps) {
  const heading = useTitleFocus(title);
  return (
    <div class={styles.page} data-wide={isWide}>
      <header class={styles.header} data-screen-only>
        <Whose />
        <KeyboardStrip lit={lit} />
        <nav aria-label="Screens" class={styles.nav}>
          {LINKS.map(([screen, label]) => (
            <a
              key={screen}
              class={styles.link}
              href={hrefOf(screen)}
              aria-current={route.value.screen === screen ? 'page' : undefined}
            >
              {label}
            </a>
          ))}
        </nav>
      </header>
      <main class={styles.main}>
        {!NAMED.has(route.value.screen) && <WhoseName isForPaper />}
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {note !== undefined && <p class={styles.note}>{note}</p>}
        <div class={styles.content}>{children}</div>
      </main>
    </div>
  );
}

let isFirstScreen = true;

/**
 * For the heading of a screen: names the document, and moves the focus there when the screen is opened, so that a
 * screen reader says where one is. Not on the first load, where the browser begins at the top anyway, and asking would
 * cost a layout.
 */
export function useTitleFocus(title: string) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (isFirstScreen) {
      isFirstScreen = false;
      return;
    }
    heading.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, []);
  useEffect(() => {
    document.title = `${title} · Arpeggiary`;
  }, [title]);
  return heading;
}
