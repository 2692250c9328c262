/** Baselines without a model of what to choose: what teachers and students do with a list of notes. */
import { type StartingNote, type Way } from '../../../shared/music/deck';
import { lookBackOf } from '../../../shared/planning/look-back';
import { fill, type MakePlanner, type Morning, NOTES, stageOf } from './planner';

const round = ({ student }: Morning, note: StartingNote): readonly [StartingNote, Way] => [
  note,
  stageOf(student, note),
];

/** One note a day. */
export const oneNoteADay: MakePlanner = () => ({
  plan: (morning) => fill(morning, () => round(morning, NOTES[morning.practised % NOTES.length]!)),
});

/** One note a week, by the calendar. */
export const oneNoteAWeek: MakePlanner = () => ({
  plan: (morning) =>
    fill(morning, () => round(morning, NOTES[Math.floor(morning.number / 7) % NOTES.length]!)),
});

/** The next note with each round, on from where the day before ended. */
export const nextNote: MakePlanner = () => {
  let place = 0;
  return {
    plan: (morning) => fill(morning, () => round(morning, NOTES[place++ % NOTES.length]!)),
  };
};

/** The same, and goes back to a lower stage as often as the app. */
export const nextNoteLookingBack: MakePlanner = () => {
  let place = 0;
  return {
    plan: (morning) => {
      const entries = new Map(
        [...morning.student.noteCounts].map(([note, count]) => [note, count.entries]),
      );
      return fill(morning, () => {
        const note = NOTES[place++ % NOTES.length]!;
        const back = lookBackOf(morning.student, note, entries);
        entries.set(note, (entries.get(note) ?? 0) + 1);
        return back === null ? round(morning, note) : [note, back.way];
      });
    },
  };
};

/** A note drawn for each round. */
export const randomNote: MakePlanner = (_, share) => ({
  plan: (morning) =>
    fill(morning, () => round(morning, NOTES[Math.floor(share() * NOTES.length)]!)),
});
