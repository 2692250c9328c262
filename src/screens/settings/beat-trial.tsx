/** A beat to set loudness and lateness by; it takes changes up at once. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { type Metronome, startMetronome } from '../../sound/metronome';
import styles from './beat-trial.module.css';

const BEATS_PER_MINUTE = 80;
const BEATS = 4;

export function BeatTrial() {
  const { beat, volume, latencyOffsetMs } = preferences.value;
  const metronome = useRef<Metronome | null>(null);
  /** Counts starts and stops, so that a metronome that comes too late is known as such. */
  const turn = useRef(0);
  const [isOn, setOn] = useState(false);
  const [shown, setShown] = useState<number | null>(null);

  const silence = () => {
    turn.current += 1;
    metronome.current?.stop();
    metronome.current = null;
  };
  const stop = () => {
    silence();
    setOn(false);
    setShown(null);
  };
  const start = () => {
    silence();
    setOn(true);
    const ours = turn.current;
    startMetronome({
      beatsPerMinute: BEATS_PER_MINUTE,
      countInBeats: 0,
      beatsPerBar: BEATS,
      volume,
      sound: beat === 'heard',
      latencyOffsetMs,
      onBeat: ({ index }) => setShown(index % BEATS),
    }).then(
      (started) => {
        if (ours === turn.current) metronome.current = started;
        else started.stop();
      },
      () => {
        stop();
        say('This device gives no sound now.');
      },
    );
  };
  const follow = useRef(() => {});
  follow.current = () => {
    if (isOn) start();
  };
  useEffect(() => follow.current(), [beat, volume, latencyOffsetMs]);
  useEffect(() => silence, []);

  return (
    <div class={styles.trial}>
      <Button onClick={isOn ? stop : start}>{isOn ? 'Stop the beat' : 'Try the beat'}</Button>
      <span class={styles.marks} aria-hidden="true">
        {Array.from({ length: BEATS }, (_, i) => (
          <span key={i} class={styles.mark} data-now={shown === i} />
        ))}
      </span>
    </div>
  );
}
