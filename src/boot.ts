/** The first script: shows today's list as it last stood, and then reads the app, which takes it over. */
import './styles/type.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import { showSnapshot } from './snapshot/show';
// Before all else there is the one policy that a script could be made by, so that no other can take its name.
import './trusted';

const readApp = () => void import('./main');

// Reading the app keeps the page from being drawn, so the picture comes first; a page in the background has no frames.
if (showSnapshot(document.getElementById('app')!) && !document.hidden) {
  requestAnimationFrame(() => setTimeout(readApp));
} else {
  readApp();
}
