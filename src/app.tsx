/** The shell: the store for the screens, the screen that the address names, and what the app says by itself. */
import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { Button } from './parts/button/button';
import { Notice } from './parts/notice/notice';
import { Page } from './parts/page/page';
import styles from './app.module.css';
import { lazyScreens } from './lazy';
import { route, type ScreenName, type ScreenProps } from './route';
import { TodayScreen } from './screens/today/today-screen';
import { demoStore, leaveDemo, StoreContext } from './store-context';
import type { Store } from './store/store';
import { UpdateNotice } from './update/notice';

type LazyName = keyof typeof lazyScreens;
type Loading = ComponentType<ScreenProps> | 'failed';

/** Screens that have been loaded, so that going back to one is immediate. */
const loaded = signal<ReadonlyMap<LazyName, Loading>>(new Map());

async function load(name: LazyName): Promise<void> {
  const screen = await lazyScreens[name]().catch((): Loading => 'failed');
  loaded.value = new Map(loaded.value).set(name, screen);
}

export function App({ store }: { readonly store: Store }) {
  const demo = demoStore.value;
  const shown = demo ?? store;
  return (
    <StoreContext.Provider value={shown}>
      {demo !== null && <DemoStrip />}
      <StoreState store={shown} />
      <CurrentScreen key={demo === null ? 'own' : 'demo'} />
      <Notice />
      <UpdateNotice />
    </StoreContext.Provider>
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

function DemoStrip() {
  return (
    <aside class={styles.demo} data-screen-only aria-label="Invented student">
      <p>An invented student, to look round. Nothing is kept.</p>
      <Button onClick={leaveDemo}>Leave</Button>
    </aside>
  );
}

/** Only what keeps the screens from working. */
function StoreState({ store }: { readonly store: Store }) {
  const status = store.status.value;
  if (status === 'outdated') {
    return (
      <div role="alert" class={styles.alarm}>
        <p>A newer version of the app is open in another tab. Nothing can be saved here.</p>
        <Button onClick={() => location.reload()}>Load it here too</Button>
      </div>
    );
  }
  if (status === 'failed') {
    return (
      <div role="alert" class={styles.alarm}>
        <p>The record on this device cannot be opened, so nothing can be saved.</p>
        <Button onClick={() => location.reload()}>Try again</Button>
      </div>
    );
  }
  return null;
}
