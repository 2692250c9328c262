/** By what a run is heard, and what that allows. */
import type { Preferences } from '../../preferences';
import { microphone } from '../../sound/microphone';
import { midi } from '../../sound/midi-input';

export type HearsBy = 'midi' | 'microphone';

/** By what a run that begins now would be heard; a keyboard goes before the microphone. Follows what is connected. */
export function hearsBy(): HearsBy | null {
  if (midi.state.value === 'connected') return 'midi';
  return microphone.state.value === 'ready' ? 'microphone' : null;
}

/** Whether the page can turn with the player: not against a beat that sounds, which by the microphone only counts in. */
export const mayFollow = (by: HearsBy | null, beat: Preferences['beat']): boolean =>
  by === 'microphone' || (by === 'midi' && beat !== 'heard');
