/** A student with something in every part of the report. */
import { addDays } from '../../shared/log/day';
import type { EventBody } from '../../shared/log/events';
import { roundItems } from '../../shared/music/deck';
import { replay } from '../../shared/planning/student';
import { event, programme, run, START } from '../learning/events';

export const TODAY = addDays(START, 20);
export const DATE = addDays(START, 60);

const on = (day: number, ...bodies: readonly EventBody[]) => bodies.map((body) => event(body, day));

export function reportedStudent(name = 'Ono Muster', said = 'Calmer. Wrist free.') {
  const rounds = (['right.2', 'left.2'] as const).flatMap((way) =>
    (['c', 'eb'] as const).flatMap((note) =>
      roundItems(note, way).map((item, i) => run(item.id, i % 5 === 0 ? 1 : 3, 180, 3)),
    ),
  );
  return replay([
    programme({ notes: ['c', 'eb'], date: DATE }),
    ...rounds,
    ...on(
      5,
      { kind: 'name', name },
      { kind: 'report', share: 0.2, stages: [{ stage: 'right.2', share: 0.4 }], played: 10 },
    ),
    ...roundItems('eb', 'together.2').map((item) => run(item.id, 2, 120, 12)),
    ...on(
      13,
      { kind: 'remark', about: null, text: said, by: 'teacher' },
      { kind: 'remark', about: null, text: 'My own note.' },
      {
        kind: 'examination',
        seed: 7,
        settings: {
          notes: ['c', 'eb'],
          chords: ['major-53', 'minor-53'],
          stages: ['right.2'],
          count: 2,
          toPass: 2,
          tempoPercent: 100,
          beat: false,
        },
        items: [
          { item: 'eb.minor-53.right.2', tempo: 240, fluency: 3 },
          { item: 'c.major-53.right.2', tempo: 240, fluency: 2 },
        ],
        judge: 'teacher',
        forecast: 0.31,
      },
      { kind: 'aside', item: 'c.diminished-7.left.2', aside: true },
    ),
  ]);
}
