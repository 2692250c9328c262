/**
 * A short check before one relies on the microphone: is the room quiet enough, is it too loud, how is the piano tuned.
 *
 * <MicrophoneCheck />
 */
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { QUIET_ENOUGH } from '../../../shared/listening/sound/room';
import { prefer } from '../../preferences';
import { checkSound } from '../../sound/listen';
import { type Capture, microphone } from '../../sound/microphone';
import { Button } from '../button/button';
import styles from './ear-control.module.css';

/** Milliseconds of each part. */
const QUIET = 1500;
const PLAYING = 6000;

type Phase = 'idle' | 'quiet' | 'playing' | 'working';

const TELLS: Readonly<Record<Exclude<Phase, 'idle'>, string>> = {
  quiet: 'Be quiet for a moment …',
  playing: 'Now play a few notes one after another, as loudly as you practise …',
  working: 'One moment …',
};

const pause = (milliseconds: number) =>
  new Promise<void>((done) => {
    setTimeout(done, milliseconds);
  });

export function MicrophoneCheck() {
  const phase = useSignal<Phase>('idle');
  const result = useSignal<readonly string[]>([]);
  const open = useRef<Capture | null>(null);
  useEffect(() => () => open.current?.stop(), []);

  const check = async () => {
    result.value = [];
    const capture = await microphone.open();
    if (capture === null) return;
    open.current = capture;
    phase.value = 'quiet';
    await pause(QUIET);
    phase.value = 'playing';
    await pause(PLAYING);
    phase.value = 'working';
    const { isFiltered } = capture;
    const sound = capture.sound();
    capture.stop();
    open.current = null;
    try {
      const { room, tuning } = await checkSound(sound);
      if (tuning !== null) await prefer({ pianoCents: tuning }).catch(() => undefined);
      result.value = [roomText(room), tuningText(tuning), ...(isFiltered ? [FILTERED] : [])];
    } catch {
      result.value = ['This browser could not work out the sound.'];
    }
    phase.value = 'idle';
  };

  const current = phase.value;
  return (
    <div class={styles.ear}>
      {current === 'idle' && (
        <Button kind="quiet" onClick={() => void check()}>
          Check the room and the piano
        </Button>
      )}
      <div role="status">
        {current === 'idle' ? result.value.map((text) => <p key={text}>{text}</p>) : TELLS[current]}
      </div>
    </div>
  );
}

const FILTERED =
  'This browser changes the sound of the microphone as for speech, although asked not to: what is heard is less sure.';

function roomText({ overNoise, isClipped }: Awaited<ReturnType<typeof checkSound>>['room']) {
  if (isClipped) return 'It was too loud for the microphone: move the device further away.';
  if (overNoise < QUIET_ENOUGH) {
    return 'Too little of the piano over the noise: move the device nearer, or make the room quieter.';
  }
  return 'The piano is heard well over the noise of the room.';
}

const tuningText = (cents: number | null): string =>
  cents === null
    ? 'The pitch of the piano could not be told: play single notes in the middle of the keyboard.'
    : `The piano is tuned to A = ${Math.round(440 * 2 ** (cents / 1200))} Hz; this is remembered.`;
