/**
 * Offers to listen to a MIDI keyboard, asks the browser when the person says so, and tells how it stands. Nothing is
 * there where the browser has no Web MIDI and was not asked.
 *
 * <EarControl />
 */
import { prefer } from '../../preferences';
import { midi, type MidiState } from '../../sound/midi-input';
import { Button } from '../button/button';
import styles from './ear-control.module.css';

const TELLS: Readonly<Record<Exclude<MidiState, 'off' | 'connected'>, string>> = {
  asking: 'The browser asks whether this app may use MIDI.',
  refused:
    'The browser does not let this app use MIDI. Allow it in the settings of the site, then try again.',
  missing: 'There is no MIDI on this device, or in this browser.',
  empty: 'No keyboard is connected: plug one in and switch it on.',
};

/** A preference that could not be kept still holds until the page is left. */
const keepEar = (ear: 'none' | 'midi') => void prefer({ ear }).catch(() => undefined);

function start(): void {
  keepEar('midi');
  void midi.connect();
}

function stop(): void {
  keepEar('none');
  midi.disconnect();
}

export const hasMidi = (): boolean => 'requestMIDIAccess' in navigator;

export function EarControl() {
  const state = midi.state.value;
  if (!hasMidi()) return null;
  if (state === 'off') {
    return (
      <Button kind="quiet" onClick={start}>
        Listen to a MIDI keyboard
      </Button>
    );
  }
  return (
    <div class={styles.ear}>
      <p role="status">{state === 'connected' ? <Connected /> : TELLS[state]}</p>
      {state === 'connected' || state === 'empty' ? (
        <Button kind="quiet" onClick={stop}>
          Stop listening
        </Button>
      ) : (
        state !== 'asking' && (
          <Button kind="quiet" onClick={start}>
            Try again
          </Button>
        )
      )}
    </div>
  );
}

function Connected() {
  return (
    <>
      <span class={styles.lamp} data-lit={midi.down.value.length > 0} aria-hidden="true" />
      Listening to {midi.names.value.join(' and ')}
    </>
  );
}
