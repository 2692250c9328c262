/** Scores as this person plays them: their names, their fingering, their form of contrary motion. */
import { type Item, roundItems } from '../../shared/music/deck';
import type { Score } from '../../shared/music/score';
import { scoreOf, type ScoreOptions } from '../../shared/music/score-of';
import type { Tempo } from '../../shared/music/tempo';
import { fingeringFor } from '../../shared/planning/chosen-fingering';
import type { Student } from '../../shared/planning/student';
import { preferences, type Preferences } from '../preferences';
import { chordText, noteText, wayText } from './words';

/** Of a student with a programme. */
export function itemScore(
  student: Student,
  item: Item,
  tempo: Tempo,
  preferred = preferences.value,
): Score {
  const title = `${chordText(item.note, item.chord).title}, ${wayText(item.way)}`;
  return scoreOf([item], { ...optionsFor(student, preferred), title, tempo });
}

/** The whole round that an item belongs to, of a student with a programme. */
export function roundScore(student: Student, { note, way }: Item, tempo: Tempo): Score {
  const title = `The round from ${noteText(note)}, ${wayText(way)}`;
  const options = optionsFor(student, preferences.value);
  return scoreOf(roundItems(note, way), { ...options, title, tempo });
}

function optionsFor(student: Student, { blackNames, keySignature }: Preferences) {
  const { grouping, contraryForm } = student.programme!;
  return {
    grouping,
    contraryForm,
    blackNames,
    hasKeySignatures: keySignature === 'own',
    pedal: false,
    fingeringOf: (item, hand) => fingeringFor(student, item, hand)?.plan ?? null,
  } satisfies Omit<ScoreOptions, 'title' | 'tempo'>;
}
