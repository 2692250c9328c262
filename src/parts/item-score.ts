/** The score of an item as this person plays it: their names, their fingering, their form of contrary motion. */
import type { Item } from '../../shared/music/deck';
import type { Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import type { Tempo } from '../../shared/music/tempo';
import { fingeringFor } from '../../shared/planning/chosen-fingering';
import type { Student } from '../../shared/planning/student';
import { preferences } from '../preferences';
import { chordText, wayText } from './words';

/** "D, major triad, first inversion, hands together, four octaves". */
export function itemTitle(item: Item): string {
  const { bottom, name } = chordText(item.note, item.chord);
  return `${bottom}, ${name}, ${wayText(item.way)}`;
}

/** Of a student with a programme. */
export function itemScore(
  student: Student,
  item: Item,
  tempo: Tempo,
  blackNames = preferences.value.blackNames,
): Score {
  const { grouping, contraryForm } = student.programme!;
  return scoreOf([item], {
    title: itemTitle(item),
    tempo,
    grouping,
    contraryForm,
    blackNames,
    pedal: false,
    fingeringOf: (one, hand) => fingeringFor(student, one, hand)?.plan ?? null,
  });
}
