/** The shell: the store for the screens, the screen that the address names, and what the app says by itself. */
import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button } from './parts/button/button';
import { Notice } from './parts/notice/notice';
import { Page } from './parts/page/page';
import styles from './app.module.css';
import { lazyScreens } from './lazy';
import { route, type ScreenName, type ScreenProps } from './route';
import { TodayScreen } from './screens/today/today-screen';
import { demoStore, leaveDemo, StoreContext, StudentsContext } from './store-context';
import type { Device } from './store/store';
import { UpdateNotice } from './update/notice';

type LazyName = keyof typeof lazyScreens;
type Loading = ComponentType<ScreenProps> | 'failed';

/** Screens that have been loaded, so that going back to one is immediate. */
const loaded = signal<ReadonlyMap<LazyName, Loading>>(new Map());

async function load(name: LazyName): Promise<void> {
  const screen = await lazyScreens[name]().catch((): Loading => 'failed');
  loaded.value = new Map(loaded.value).set(name, screen);
}

export function App({ store }: { readonly store: Device }) {
  const demo = demoStore.value;
  const shown = demo ?? store.current.value;
  return (
    <StudentsContext.Provider value={demo === null ? store.students : null}>
      <StoreContext.Provider value={shown}>
        {demo !== null && <DemoStrip />}
        <StoreProblem store={store} />
        <Notice />
        {/* Another student begins with screens of its own. */}
        <CurrentScreen key={shown} />
        <Slip />
      </StoreContext.Provider>
    </StudentsContext.Provider>
  );
}

function CurrentScreen() {
  const { screen, argument } = route.value;
  return screen === 'today' ? <TodayScreen /> : <LazyScreen name={screen} argument={argument} />;
}

function LazyScreen({ name, argument }: { readonly name: LazyName } & ScreenProps) {
  const Screen = loaded.value.get(name);
  useEffect(() => {
    if (Screen === undefined) void load(name);
  }, [name, Screen]);
  if (Screen === undefined) return null;
  if (Screen === 'failed') return <NotLoaded name={name} />;
  return <Screen argument={argument} />;
}

function NotLoaded({ name }: { readonly name: ScreenName }) {
  return (
    <Page title="This screen could not be loaded" note={`It is the screen “${name}”.`}>
      <p>Without a network it is there only once the app has been stored on this device.</p>
      <p>
        <Button onClick={() => location.reload()}>Try again</Button>
      </p>
    </Page>
  );
}

/**
 * What the app says about itself lies over the lower edge. Bars that stick to that edge move up by its height, so that
 * it never covers the one button of a screen.
 */
function Slip() {
  const slip = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const observer = new ResizeObserver(() => {
      const height = slip.current?.offsetHeight ?? 0;
      document.documentElement.style.setProperty('--slip', `${height}px`);
    });
    observer.observe(slip.current!);
    return () => observer.disconnect();
  }, []);
  return (
    <div ref={slip} class={styles.slip}>
      <UpdateNotice />
    </div>
  );
}

function DemoStrip() {
  return (
    <aside class={styles.demo} data-screen-only aria-label="Invented student">
      <p>An invented student: nothing is kept.</p>
      <Button onClick={leaveDemo}>Leave</Button>
    </aside>
  );
}

/** What the person should know about storage; the message says what to do. */
function StoreProblem({ store }: { readonly store: Pick<Device, 'problem'> }) {
  const problem = store.problem.value;
  if (problem === null) return null;
  return (
    <div role="alert" class={styles.alarm}>
      <p>{problem.message}</p>
      <Button onClick={() => location.reload()}>Reload</Button>
    </div>
  );
}
