import { expect, test } from 'vitest';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { CHORD_IDS } from '../../shared/music/chords';
import { roundItems } from '../../shared/music/deck';
import type { RunEvent } from '../../shared/log/events';
import { replay } from '../../shared/planning/student';
import { nearlyOpen } from '../../src/screens/play/moved';
import { programme, run } from '../learning/events';

const { stages } = DEFAULT_PROGRAMME;

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
