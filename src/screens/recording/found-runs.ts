/** The runs that a MIDI recording holds, as this person plays them, each with what it suggests. */
import { readMidiFile } from '../../../shared/formats/smf-reader';
import { cutRuns } from '../../../shared/listening/cut';
import { expectedOf } from '../../../shared/listening/expected';
import { judge } from '../../../shared/listening/judge';
import { suggestedFluency } from '../../../shared/listening/suggest';
import { isPedalled } from '../../../shared/listening/take';
import type { Fluency, RunBody } from '../../../shared/log/events';
import { targetFor } from '../../../shared/log/programme';
import type { RunTake } from '../../../shared/log/run-take';
import type { Item } from '../../../shared/music/deck';
import type { Score } from '../../../shared/music/score';
import { scoreOf } from '../../../shared/music/score-of';
import { playableTempo, type Tempo } from '../../../shared/music/tempo';
import type { Student } from '../../../shared/planning/student';
import { itemScore } from '../../parts/item-score';

export interface FoundRun {
  readonly item: Item;
  /** Seconds from the beginning of the recording. */
  readonly from: number;
  readonly take: RunTake;
  readonly tempo: Tempo;
  readonly pedal: boolean;
  readonly score: Score;
  readonly fluency: Fluency;
}

/**
 * The runs in the bytes of a file, in their order, for a student with a programme. Throws a MidiFileError if it cannot
 * be read.
 */
export function runsInFile(bytes: Uint8Array, student: Student): readonly FoundRun[] {
  const programme = student.programme!;
  const { contraryForm, grouping } = programme;
  const recording = readMidiFile(bytes);
  const runs = cutRuns(recording, {
    contraryForm,
    scoreOf: (items) =>
      scoreOf(items, {
        title: '',
        tempo: 240,
        grouping,
        contraryForm,
        pedal: false,
        fingeringOf: () => null,
      }),
  });
  return runs.flatMap(({ item, from, take: heard }): readonly FoundRun[] => {
    const score = itemScore(student, item, targetFor(programme, item));
    const [take] = judge(expectedOf(score), heard);
    // Without a tempo there is nothing to record.
    if (!take || take.tempo === null) return [];
    const tempo = playableTempo(take.tempo, grouping);
    const pedal = isPedalled(heard) ?? false;
    return [{ item, from, take, tempo, pedal, score, fluency: suggestedFluency(take, score) }];
  });
}

export const bodyOf = ({ item, tempo, pedal, take }: FoundRun, fluency: Fluency): RunBody => ({
  kind: 'run',
  item: item.id,
  tempo,
  fluency,
  pedal,
  judge: 'player',
  entry: null,
  take,
});
