/** A student of whom there is as much to report as can be: all notes and stages, and every list longer than its room. */
import { addDays } from '../../shared/log/day';
import type { EventBody, ExaminationBody, LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { CHORD_IDS } from '../../shared/music/chords';
import { DECK, STAGES, stageIndex, STARTING_NOTES } from '../../shared/music/deck';
import { replay, type Student } from '../../shared/planning/student';
import { event, programme, run, START } from '../learning/events';

const LAST = 90;
export const TODAY = addDays(START, LAST + 1);

const LONG =
  'The thumb waits before it passes under; let the elbow lead, and listen for the bump. ';
/** Starting notes have long names, and so have people. */
const NAME = 'Maximiliane Charlotte Brückenpfeiler-Stradivarius von Nirgendwo';

const asked = (target: number) => ({ asked: true, target });
const GOALS = {
  'right.2': asked(240),
  'left.2': asked(240),
  'together.2': asked(224),
  'together.4': asked(208),
  'together.contrary': asked(152),
};

/** Every item of every stage each week, faster from time to time, and some of them not even. */
const runsOf = (week: number): readonly LogEvent[] =>
  DECK.filter(({ way, index }) => stageIndex(way) >= 0 && (index + week) % 2 === 0).map(
    ({ id, index }) =>
      run(id, (index + week) % 7 < 2 ? 1 : 3, 120 + 7 * week + 5 * ((index + week) % 3), 7 * week),
  );

const examination: ExaminationBody = {
  kind: 'examination',
  seed: 7,
  settings: {
    notes: STARTING_NOTES,
    chords: CHORD_IDS,
    stages: STAGES,
    count: 2,
    toPass: 2,
    tempoPercent: 90,
    beat: false,
  },
  items: [
    { item: 'eb.minor-53.right.2', tempo: 240, fluency: 3 },
    { item: 'c.major-53.right.2', tempo: 240, fluency: 2 },
  ],
  judge: 'teacher',
  forecast: 0.31,
};

const on = (day: number, body: EventBody) => event(body, day);

export function fullStudent(): Student {
  return replay([
    programme({
      ...DEFAULT_PROGRAMME,
      notes: STARTING_NOTES,
      stages: GOALS,
      date: addDays(TODAY, 40),
      requirements: LONG.repeat(20),
    }),
    on(0, { kind: 'name', name: NAME }),
    ...[0, 1, 2, 3, 4, 5, 6, 7, 8].flatMap(runsOf),
    on(60, {
      kind: 'report',
      share: 0.2,
      stages: STAGES.map((stage) => ({ stage, share: 0.3 })),
      played: 600,
    }),
    ...[9, 10, 11, 12].flatMap(runsOf),
    ...[...Array(6).keys()].map((i) => on(LAST, { ...examination, forecast: i / 6 })),
    ...[...Array(8).keys()].map(() =>
      on(LAST, {
        kind: 'remark',
        about: 'gb.dominant-43.together.contrary',
        text: LONG.repeat(6),
        by: 'teacher',
      }),
    ),
    ...DECK.filter(({ index }) => index % 30 === 0).map(({ id }) =>
      on(LAST, { kind: 'aside', item: id, aside: true }),
    ),
  ]);
}
