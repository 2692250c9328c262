/**
 * Lets a score be heard: at any tempo, the hands together or apart, with the beat, again and again over any stretch.
 *
 * const place = useSignal<number | null>(null);
 * <Staff score={score} at={place.value} … />
 * <Playback score={score} place={place} initial={{ piano: false, beat: true, repeat: 0 }} />
 *
 * `place` gets where the music is, in parts of a beat; null while nothing is heard. `hands` gets the hands that are chosen
 * to be heard, for those who mark only what sounds. Without the piano it is a metronome
 * with a moving place. `initial` says how it begins; without it the score is played once, by the piano, as fast as it is
 * written.
 */
import { effect, type Signal, useSignal } from '@preact/signals';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Hands } from '../../../shared/music/deck';
import { handsIn, type Stretch } from '../../../shared/music/playing';
import { PARTS_OF_BEAT, type Score } from '../../../shared/music/score';
import { stretchesOf } from '../../../shared/music/stretches';
import { markOf, type Tempo } from '../../../shared/music/tempo';
import { preferences } from '../../preferences';
import type { Playing } from '../../sound/passage';
import { startPlayback } from '../../sound/playback';
import { COUNT_IN } from '../../sound/schedule';
import { Button } from '../button/button';
import { Choice } from '../choice/choice';
import { useMedia } from '../media';
import { TempoStepper } from '../stepper/tempo-stepper';
import styles from './playback.module.css';
import { createPlayer, type Player } from './player';
import { RepeatChoice } from './repeat-choice';

export interface PlaybackSettings {
  readonly tempo: Tempo;
  readonly hands: Hands;
  readonly piano: boolean;
  readonly beat: boolean;
  /** Which of stretchesOf(score) is repeated; 0 is all of it. Null: all of it once. */
  readonly repeat: number | null;
}

interface PlaybackProps {
  readonly score: Score;
  readonly place: Signal<number | null>;
  readonly hands?: Signal<Hands>;
  readonly initial?: Partial<PlaybackSettings>;
}

const HANDS: readonly { readonly value: Hands; readonly label: string }[] = [
  { value: 'right', label: 'right' },
  { value: 'left', label: 'left' },
  { value: 'together', label: 'both' },
];

export function Playback({ score, place, hands: chosen, initial }: PlaybackProps) {
  const [settings, setSettings] = useState<PlaybackSettings>({
    tempo: score.tempo,
    hands: handsIn(score),
    piano: true,
    beat: false,
    repeat: null,
    ...initial,
  });
  const set = (change: Partial<PlaybackSettings>) => setSettings({ ...settings, ...change });
  const stretches = useMemo(() => stretchesOf(score), [score]);
  const playing = usePlaying(score, stretches, settings);
  const player = usePlayer(place);
  useEffect(() => player.change(playing), [player, playing]);

  const { tempo, hands, piano, beat, repeat } = settings;
  useEffect(() => {
    if (chosen) chosen.value = hands;
  }, [chosen, hands]);
  const { volume, latencyOffsetMs } = preferences.value;
  const state = player.state.value;
  const start = () =>
    player.start({ playing, countInBeats: beat ? COUNT_IN : 0, volume, latencyOffsetMs });
  return (
    <div role="group" aria-label="Hear it" data-screen-only>
      <div class={styles.controls}>
        <Button size="stand" onClick={state === 'stopped' ? start : player.stop}>
          {state === 'stopped' ? 'Play' : 'Stop'}
        </Button>
        <TempoStepper
          label="Tempo"
          tempo={tempo}
          grouping={score.grouping}
          onChange={(wish) => set({ tempo: wish })}
        />
        {handsIn(score) === 'together' && (
          <div class={styles.hands}>
            <Choice
              legend="Hands"
              options={HANDS}
              value={hands}
              onChange={(wish) => set({ hands: wish })}
            />
          </div>
        )}
        <fieldset class={styles.sounds}>
          <legend class={styles.label}>Sound</legend>
          <Switch label="piano" isOn={piano} onChange={(wish) => set({ piano: wish })} />
          <Switch label="beat" isOn={beat} onChange={(wish) => set({ beat: wish })} />
        </fieldset>
        <RepeatChoice
          stretches={stretches}
          value={repeat}
          onChange={(wish) => set({ repeat: wish })}
        />
      </div>
      <p class={styles.note} role="status">
        {player.isSilent.value && 'This device gives no sound now. The place moves without it.'}
      </p>
      {state === 'interrupted' && (
        <Button kind="main" onClick={player.resume}>
          The sound was interrupted: go on
        </Button>
      )}
    </div>
  );
}

/** Kept as long as nothing of it changes, as each new one is handed to the sound. */
function usePlaying(
  score: Score,
  stretches: readonly Stretch[],
  { tempo, hands, piano, beat, repeat }: PlaybackSettings,
): Playing {
  return useMemo(
    () => ({
      score,
      hands,
      stretch: stretches[repeat ?? 0] ?? stretches[0]!,
      repeats: repeat !== null,
      beatsPerMinute: markOf(tempo, score.grouping),
      piano,
      beat,
    }),
    [score, stretches, tempo, hands, piano, beat, repeat],
  );
}

function usePlayer(place: Signal<number | null>): Player {
  const heard = useSignal<number | null>(null);
  const player = useMemo(() => createPlayer(startPlayback, heard), [heard]);
  // Who asks for less motion sees the place move with the beat and not with every note.
  const isCalm = useMedia('(prefers-reduced-motion: reduce)');
  useEffect(
    () =>
      effect(() => {
        const { value } = heard;
        place.value = isCalm && value !== null ? value - (value % PARTS_OF_BEAT) : value;
      }),
    [heard, place, isCalm],
  );
  useEffect(() => player.stop, [player]);
  return player;
}

interface SwitchProps {
  readonly label: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}

function Switch({ label, isOn, onChange }: SwitchProps) {
  return (
    <label class={styles.switch}>
      <input
        type="checkbox"
        checked={isOn}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      {label}
    </label>
  );
}
