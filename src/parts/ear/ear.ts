/** What the app listens to while one plays: a MIDI keyboard, the microphone, or nothing. One at a time. */
import { prefer, preferences, type Preferences } from '../../preferences';
import { microphone } from '../../sound/microphone';
import { midi } from '../../sound/midi-input';

export const hasMidi = (): boolean => 'requestMIDIAccess' in navigator;

/** A page without a secure origin has no media devices. */
export const hasMicrophone = (): boolean =>
  'mediaDevices' in navigator && 'AudioWorkletNode' in window;

/** A preference that could not be kept still holds until the page is left. */
const keepEar = (ear: Preferences['ear']) => void prefer({ ear }).catch(() => undefined);

/** In a user's gesture, as the browser asks. */
export function listenToMidi(): void {
  keepEar('midi');
  microphone.giveUp();
  void midi.connect();
}

/** In a user's gesture, as the browser asks. The microphone is closed again until a run begins. */
export async function listenByMicrophone(): Promise<void> {
  keepEar('microphone');
  midi.disconnect();
  (await microphone.open())?.stop();
}

export function stopListening(): void {
  keepEar('none');
  midi.disconnect();
  microphone.giveUp();
}

/** What was chosen on an earlier visit, without asking anybody anything. */
export function wakeEar(): void {
  const { ear } = preferences.peek();
  if (ear === 'midi') void midi.reconnect();
  if (ear === 'microphone' && hasMicrophone()) microphone.assumeAllowed();
}
