import './styles/type.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import { render } from 'preact';
import { App } from './app';
import { dayOf, now } from './clock';
import { followLaunches } from './launch';
import { startPreferences } from './preferences';
import { openStore } from './store/store';
import { startUpdates } from './update/start';

const store = openStore({ name: 'arpeggiary', now, dayOf });
void startPreferences(store);
render(<App store={store} />, document.getElementById('app')!);
followLaunches();
void startUpdates();
