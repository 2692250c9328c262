import { expect, test } from 'vitest';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { CHORD_IDS } from '../../shared/music/chords';
import { roundItems, STAGES } from '../../shared/music/deck';
import type { RunEvent } from '../../shared/log/events';
import { replay } from '../../shared/planning/student';
import { nearlyOpen, openedBy } from '../../src/screens/play/moved';
import { programme, run } from '../learning/events';

const { stages } = DEFAULT_PROGRAMME;

const TRIADS = CHORD_IDS.slice(0, 6);
/** Seventh chords with the right hand only. */
const triadsBeyond = Object.fromEntries(
  STAGES.map((stage, i) => [stage, i === 0 ? stages[stage] : { ...stages[stage], chords: TRIADS }]),
) as Programme['stages'];

/** What is nearly open after a whole round from C, right hand, came out even once. */
function nearlyOpenWith(change: Partial<Programme>) {
  const set = programme(change);
  const runs = roundItems('c', 'right.2').map(({ id }) => run(id, 3, 200));
  return nearlyOpen(runs as RunEvent[], replay([set, ...runs]));
}

test('a stage that was even once opens the next on another day', () => {
  expect(nearlyOpenWith({})).toEqual([{ stage: 'left.2', arpeggios: CHORD_IDS.length }]);
});

test('nothing is promised beyond what the programme asks for', () => {
  const not = (stage: keyof typeof stages) => ({ ...stages[stage], asked: false });
  const rightOnly = {
    ...stages,
    'left.2': not('left.2'),
    'together.2': not('together.2'),
    'together.4': not('together.4'),
  };
  expect(nearlyOpenWith({ stages: rightOnly })).toEqual([]);
});

test('what is only a step on the way to what is asked opens too', () => {
  const leftIsAStep = { ...stages, 'left.2': { ...stages['left.2'], asked: false } };
  expect(nearlyOpenWith({ stages: leftIsAStep })).toEqual([
    { stage: 'left.2', arpeggios: CHORD_IDS.length },
  ]);
});

test('chords that are not asked for in the next stage are not counted', () => {
  expect(nearlyOpenWith({ stages: triadsBeyond })).toEqual([
    { stage: 'left.2', arpeggios: TRIADS.length },
  ]);
  const set = programme({ stages: triadsBeyond });
  const round = roundItems('c', 'right.2').map(({ id }) => id);
  const runs = [0, 1, 2].flatMap((day) => round.map((id) => run(id, 4, 240, day)));
  const opened = openedBy(replay([set]), replay([set, ...runs]));
  expect(opened).toEqual([{ stage: 'left.2', arpeggios: TRIADS.length }]);
});
