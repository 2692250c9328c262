/** A run heard by the microphone: the take of it, and what the person should know of how well it was heard. */
import type { Expected } from '../../../shared/listening/expected';
import { QUIET_ENOUGH } from '../../../shared/listening/sound/room';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import type { Hearing } from '../../../shared/listening/sound/hear';
import type { Take } from '../../../shared/listening/take';
import type { Tempo } from '../../../shared/music/tempo';
import { say, unsay } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { hearRun } from '../../sound/listen';

interface MicrophoneRun {
  /** Notes a minute that were set. */
  readonly tempo: Tempo;
  readonly isFiltered: boolean;
}

/** Null where the run could not be made out; that is said. */
export async function heardByMicrophone(
  sound: Sound,
  expected: Expected,
  { tempo, isFiltered }: MicrophoneRun,
): Promise<Take | null> {
  say('Working out what was heard …');
  try {
    const tuning = preferences.peek().pianoCents;
    const hearing = await hearRun(sound, expected, { tempo, tuning, isFiltered });
    unsay();
    const text = textOf(hearing, isFiltered);
    if (text !== null) say(text);
    return hearing.isFollowed ? hearing.take : null;
  } catch {
    say('This browser could not work out what was heard, so the run was not judged.');
    return null;
  }
}

function textOf({ isFollowed, room }: Hearing, isFiltered: boolean): string | null {
  if (room.isClipped) {
    return isFollowed
      ? 'It was too loud for the microphone: move the device further from the piano.'
      : 'It was too loud for the microphone, so the run was not judged: move the device away.';
  }
  if (!isFollowed) {
    return 'The notes of this run were not heard, so it was not judged: move the device nearer, and check the room and the piano in the settings.';
  }
  if (room.overNoise < QUIET_ENOUGH) {
    return 'There was much noise, so missed notes were not counted: move the device nearer, or make the room quieter.';
  }
  return isFiltered
    ? 'This browser changes the sound of the microphone: what was heard is less sure.'
    : null;
}
