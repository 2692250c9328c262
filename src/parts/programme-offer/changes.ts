/** What an offered programme changes, line by line, in words. */
import type { Programme, StageGoal } from '../../../shared/log/programme';
import { CHORD_IDS } from '../../../shared/music/chords';
import { STAGES } from '../../../shared/music/deck';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import { chordsText } from '../chord-families';
import { dateText } from '../dates';
import { notesText } from '../programme-text';
import { wayText } from '../words';

export interface Change {
  readonly what: string;
  /** Null where there is no programme yet. */
  readonly before: string | null;
  readonly after: string;
}

function goalText({ asked, target, targets = {}, chords }: StageGoal, grouping: Grouping): string {
  if (!asked) return 'not asked';
  const own = [...new Set(CHORD_IDS.flatMap((chord) => targets[chord] ?? []))].map((tempo) => {
    const some = CHORD_IDS.filter((chord) => targets[chord] === tempo);
    return ` (${chordsText(some)} at ${markOf(tempo, grouping)})`;
  });
  const tempo = `at ${markOf(target, grouping)}${own.join('')}`;
  return chords === undefined ? tempo : `${tempo}, ${chordsText(chords)}`;
}

/** Each line of a programme: what it is about, and how to say it. */
const LINES: readonly (readonly [string, (programme: Programme) => string])[] = [
  ['Starting notes', notesText],
  ['The metronome counts', ({ grouping }) => `${grouping === 3 ? 'three' : 'four'} notes a beat`],
  ...STAGES.map(
    (stage) =>
      [
        wayText(stage),
        ({ stages, grouping }: Programme) => goalText(stages[stage], grouping),
      ] as const,
  ),
  ['Stage reached', ({ reached }) => wayText(reached)],
  [
    'Contrary motion as',
    ({ contraryForm }) => (contraryForm === 'plain' ? 'outwards and back' : 'formula pattern'),
  ],
  ['Minutes a day', ({ minutes }) => String(minutes)],
  ['Days a week', ({ daysPerWeek }) => String(daysPerWeek)],
  ['Date', ({ date }) => (date === null ? 'none' : dateText(date))],
  [
    'Also',
    ({ furtherDates = [] }) =>
      furtherDates.map(({ day, words }) => `${words} ${dateText(day)}`.trim()).join('; ') ||
      'nothing',
  ],
  ['In words', ({ requirements }) => requirements ?? 'nothing'],
];

/** Only the lines that differ; all of them where there is no programme yet. */
export const changesOf = (before: Programme | null, after: Programme): readonly Change[] =>
  LINES.flatMap(([what, say]) => {
    const [old, next] = [before === null ? null : say(before), say(after)];
    return old === next ? [] : [{ what, before: old, after: next }];
  });
