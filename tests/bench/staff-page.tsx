/**
 * The page of an arpeggio's notes, with our engraving, or ("#smallest") with the smallest example of VexFlow's own
 * documentation in its place: a staff, a clef, four notes. Both load the same library and font.
 */
import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { Staff } from '../../src/parts/staff/staff';
import '../../src/styles/type.css';
import '../../src/styles/tokens.css';
import '../../src/styles/base.css';
import { computedPlans } from '../music/plans';

const score = scoreOf([itemOf('gb.dominant-7.together.4')], {
  title: 'G flat, dominant seventh',
  tempo: 240,
  grouping: 4,
  fingeringOf: computedPlans(),
  pedal: false,
});

async function drawSmallest(box: HTMLDivElement): Promise<void> {
  const [{ Formatter, MetricsDefaults, Renderer, Stave, StaveNote }] = await Promise.all([
    import('vexflow/core'),
    document.fonts.load("40px 'Arpeggiary Music'", '\uE050'),
  ]);
  MetricsDefaults.fontFamily = 'Arpeggiary Music';
  const renderer = new Renderer(box, Renderer.Backends.SVG);
  renderer.resize(500, 200);
  const context = renderer.getContext();
  const stave = new Stave(10, 40, 400);
  stave.addClef('treble').setContext(context).draw();
  const notes = ['c/4', 'd/4', 'e/4', 'f/4'].map(
    (key) => new StaveNote({ keys: [key], duration: 'q' }),
  );
  Formatter.FormatAndDraw(context, stave, notes);
}

function Smallest() {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => void drawSmallest(box.current!), []);
  return <div ref={box} />;
}

function Page() {
  return (
    <div id="box" style={{ width: '1024px', height: '600px' }}>
      {location.hash === '#smallest' ? (
        <Smallest />
      ) : (
        <Staff score={score} at={null} description="up and down" />
      )}
    </div>
  );
}

// Ready is the page as soon as there are notes on it.
new MutationObserver((_, observer) => {
  if (document.querySelector('#box svg .vf-notehead') === null) return;
  observer.disconnect();
  const mark = document.createElement('p');
  mark.dataset.ready = 'staff';
  document.body.append(mark);
}).observe(document.getElementById('app')!, { childList: true, subtree: true });
render(<Page />, document.getElementById('app')!);
