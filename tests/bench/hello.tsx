/** The least that a Preact page can be: what today's list is measured against. */
import { render } from 'preact';

render(<h1 data-ready="hello">Hello</h1>, document.getElementById('app')!);
