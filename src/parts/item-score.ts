/** The score of an item as this person plays it: their names, their fingering, their form of contrary motion. */
import type { Item } from '../../shared/music/deck';
import type { Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import type { Tempo } from '../../shared/music/tempo';
import { fingeringFor } from '../../shared/planning/chosen-fingering';
import type { Student } from '../../shared/planning/student';
import { preferences } from '../preferences';
import { chordText, wayText } from './words';

/** Of a student with a programme. */
export function itemScore(
  student: Student,
  item: Item,
  tempo: Tempo,
  blackNames = preferences.value.blackNames,
): Score {
  const { grouping, contraryForm } = student.programme!;
  return scoreOf([item], {
    title: `${chordText(item.note, item.chord).title}, ${wayText(item.way)}`,
    tempo,
    grouping,
    contraryForm,
    blackNames,
    pedal: false,
    fingeringOf: (one, hand) => fingeringFor(student, one, hand)?.plan ?? null,
  });
}
