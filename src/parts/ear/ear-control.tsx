/**
 * Offers to listen to a MIDI keyboard or by the microphone, asks the browser when the person says so, and tells how it
 * stands. Nothing is there where the browser has neither.
 *
 * <EarControl />
 */
import type { ComponentChildren } from 'preact';
import { microphone, type MicrophoneState } from '../../sound/microphone';
import { midi, type MidiState } from '../../sound/midi-input';
import { Button } from '../button/button';
import { hasMicrophone, hasMidi, listenByMicrophone, listenToMidi, stopListening } from './ear';
import styles from './ear-control.module.css';

const MIDI_TELLS: Readonly<Record<Exclude<MidiState, 'off' | 'connected'>, string>> = {
  asking: 'The browser asks whether this app may use MIDI.',
  refused:
    'The browser does not let this app use MIDI. Allow it in the settings of the site, then try again.',
  missing: 'There is no MIDI on this device, or in this browser.',
  empty: 'No keyboard is connected: plug one in and switch it on.',
};

const BY_MICROPHONE = 'Listening by the microphone: the beat sounds only while it counts in.';
const MICROPHONE_TELLS: Readonly<Record<Exclude<MicrophoneState, 'off'>, string>> = {
  asking: 'The browser asks whether this app may use the microphone.',
  refused:
    'The browser does not let this app use the microphone. Allow it in the settings of the site, then try again.',
  missing: 'There is no microphone here that the browser can open: connect one, then try again.',
  ready: BY_MICROPHONE,
  open: BY_MICROPHONE,
};

export function EarControl() {
  if (midi.state.value !== 'off') return <MidiEar state={midi.state.value} />;
  if (microphone.state.value !== 'off') return <MicrophoneEar state={microphone.state.value} />;
  return (
    <>
      {hasMidi() && (
        <Button kind="quiet" onClick={listenToMidi}>
          Listen to a MIDI keyboard
        </Button>
      )}
      {hasMicrophone() && (
        <Button kind="quiet" onClick={listenByMicrophone}>
          Listen by the microphone
        </Button>
      )}
    </>
  );
}

function MidiEar({ state }: { readonly state: Exclude<MidiState, 'off'> }) {
  const isOn = state === 'connected' || state === 'empty';
  return (
    <Ear isOn={isOn} isAsking={state === 'asking'} onAgain={listenToMidi}>
      {state === 'connected' ? (
        <>
          <Lamp isLit={midi.down.value.length > 0} />
          Listening to {midi.names.value.join(' and ')}
        </>
      ) : (
        MIDI_TELLS[state]
      )}
    </Ear>
  );
}

function MicrophoneEar({ state }: { readonly state: Exclude<MicrophoneState, 'off'> }) {
  const isOn = state === 'ready' || state === 'open';
  return (
    <Ear isOn={isOn} isAsking={state === 'asking'} onAgain={() => void listenByMicrophone()}>
      {isOn && <Lamp isLit={state === 'open'} />}
      {MICROPHONE_TELLS[state]}
    </Ear>
  );
}

interface EarProps {
  readonly isOn: boolean;
  readonly isAsking: boolean;
  readonly onAgain: () => void;
  readonly children: ComponentChildren;
}

function Ear({ isOn, isAsking, onAgain, children }: EarProps) {
  return (
    <div class={styles.ear}>
      <p role="status">{children}</p>
      {!isOn && !isAsking && (
        <Button kind="quiet" onClick={onAgain}>
          Try again
        </Button>
      )}
      {!isAsking && (
        <Button kind="quiet" onClick={stopListening}>
          {isOn ? 'Stop listening' : 'Do not listen'}
        </Button>
      )}
    </div>
  );
}

const Lamp = ({ isLit }: { readonly isLit: boolean }) => (
  <span class={styles.lamp} data-lit={isLit} aria-hidden="true" />
);
