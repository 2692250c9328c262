/**
 * Measures by the microphone how late the sound of this device is heard, and proposes to move the seen beat by that.
 *
 * <LatenessCheck isOn={isOn} onTurn={setOn} />
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { MOST_LATENCY, preferences } from '../../preferences';
import { type Lateness, measureLateness } from '../../sound/latency';
import { change } from './change';
import styles from './lateness-check.module.css';

/** Milliseconds, as the slider's: what remains of the microphone's own lateness is not known more finely. */
const STEP = 10;

const TELLS: Readonly<Record<Exclude<Lateness['kind'], 'measured'>, string>> = {
  refused:
    'The browser does not let this app use the microphone. Allow it in the settings of the site, then try again.',
  missing: 'There is no microphone here that the browser can open: connect one, then try again.',
  'cut-off': 'The microphone was cut off before the clicks were over. Try again.',
  'not-heard':
    'The clicks were not heard. Make the beat louder and hold the microphone to the loudspeaker or the earpiece, then try again.',
  unsteady: 'The clicks could not be told from other sounds. Try again when the room is quiet.',
  // Nobody is there to be told.
  stopped: '',
};

/** To the step of the slider, and no further than it goes. */
const settingOf = (offsetMs: number): number => {
  const stepped = STEP * Math.round(offsetMs / STEP);
  // Not -0.
  return Math.max(-MOST_LATENCY, Math.min(MOST_LATENCY, stepped)) || 0;
};

function againstReport(ms: number): string {
  if (ms === 0) return 'The sound is heard just when this device reports it.';
  const size = `${Math.abs(ms)} milliseconds${Math.abs(ms) === MOST_LATENCY ? ' or more' : ''}`;
  return `The sound is heard ${size} ${ms > 0 ? 'later' : 'earlier'} than this device reports.`;
}

interface LatenessCheckProps {
  readonly isOn: boolean;
  /** Called when measuring begins and ends: no other beat should sound meanwhile. */
  readonly onTurn: (isOn: boolean) => void;
}

export function LatenessCheck({ isOn, onTurn }: LatenessCheckProps) {
  const { volume, latencyOffsetMs } = preferences.value;
  const [found, setFound] = useState<Lateness | null>(null);
  const stopper = useRef<AbortController | null>(null);
  const stop = () => {
    stopper.current?.abort();
    onTurn(false);
  };
  const leave = useRef(stop);
  leave.current = stop;
  useEffect(() => () => leave.current(), []);

  const measure = () => {
    setFound(null);
    onTurn(true);
    const controller = new AbortController();
    stopper.current = controller;
    void measureLateness({ volume, signal: controller.signal }).then((lateness) => {
      if (controller.signal.aborted) return;
      setFound(lateness);
      onTurn(false);
    });
  };
  const setting = found?.kind === 'measured' ? settingOf(found.offsetMs) : null;
  const isSet = setting === latencyOffsetMs;
  return (
    <div class={styles.check}>
      <Button kind="quiet" onClick={isOn ? stop : measure}>
        {isOn ? 'Stop measuring' : 'Measure by the microphone how late the sound is'}
      </Button>
      <p role="status">
        {isOn && 'Be quiet while the device clicks eight times …'}
        {setting !== null && againstReport(setting)}
        {isSet && ' The seen beat is set to that.'}
        {found !== null && found.kind !== 'measured' && TELLS[found.kind]}
      </p>
      {setting !== null && !isSet && (
        <Button onClick={() => change({ latencyOffsetMs: setting })}>
          Move the seen beat to that
        </Button>
      )}
    </div>
  );
}
