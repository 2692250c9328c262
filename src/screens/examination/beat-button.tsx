import { useEffect, useRef, useState } from 'preact/hooks';
import { type Grouping, markOf, type Tempo } from '../../../shared/music/tempo';
import { Button } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { type Metronome, startMetronome } from '../../sound/metronome';

interface BeatButtonProps {
  readonly tempo: Tempo;
  readonly grouping: Grouping;
}

/** Gives the beat of one chord until it is stopped or the chord has been marked. */
export function BeatButton({ tempo, grouping }: BeatButtonProps) {
  const [isOn, setOn] = useState(false);
  const metronome = useRef<Promise<Metronome | null> | null>(null);
  const stop = () => {
    void metronome.current?.then((started) => started?.stop());
    metronome.current = null;
    setOn(false);
  };
  useEffect(() => stop, []);
  const start = () => {
    const { volume, latencyOffsetMs } = preferences.value;
    setOn(true);
    metronome.current = startMetronome({
      beatsPerMinute: markOf(tempo, grouping),
      countInBeats: 0,
      volume,
      sound: true,
      latencyOffsetMs,
      onBeat: () => undefined,
    }).catch(() => {
      setOn(false);
      say('This device gives no sound now.');
      return null;
    });
  };
  return (
    <Button size="stand" onClick={isOn ? stop : start}>
      {isOn ? 'Stop the beat' : 'Give the beat'}
    </Button>
  );
}
