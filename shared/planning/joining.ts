/** Which starting notes are on the list: black ones join one by one as the white ones hold (rule BLACK of RULES.md). */
import type { Programme } from '../log/programme';
import { isBlack, roundItems, stageIndex, type StartingNote, WAYS } from '../music/deck';
import { isOpenForMost, topStage } from './stages';
import { notesOf, type Student } from './student';

/** With fewer white notes than this there is no crowd, and all notes come from the first day. */
const CROWD = 4;
/** Of seven white notes so many hold when the first black one joins; then one more for each. */
const FIRST_AFTER = 3;
const WHITES = 7;

const wasPlayed = ({ learner }: Student, note: StartingNote): boolean =>
  WAYS.some((way) => roundItems(note, way).some(({ index }) => learner.runs[index]! > 0));

/** A note holds when most of its chords have gone beyond the stage at which the programme begins. */
export function joinedNotes(student: Student, programme: Programme): readonly StartingNote[] {
  const notes = notesOf(programme);
  const whites = notes.filter((note) => !isBlack(note));
  const begin = stageIndex(programme.reached);
  if (whites.length < CROWD || begin >= topStage(programme)) return notes;
  const holding = whites.filter((note) =>
    isOpenForMost(student.stages, programme, [note, begin + 1]),
  ).length;
  const joined = notes.filter(isBlack).filter((note, place) => {
    const needed = Math.ceil((whites.length * (FIRST_AFTER + place)) / WHITES);
    return holding >= needed || wasPlayed(student, note);
  });
  return [...whites, ...joined];
}
