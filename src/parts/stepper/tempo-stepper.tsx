/**
 * A tempo as a metronome mark, in whole beats.
 *
 * <TempoStepper label="Tempo" tempo={240} grouping={4} onChange={setTempo} />   shows ♩ = 60
 */
import type { ComponentChildren } from 'preact';
import {
  FASTEST,
  type Grouping,
  markOf,
  SLOWEST,
  type Tempo,
  tempoOf,
} from '../../../shared/music/tempo';
import { BeatNote } from './beat-note';
import { Stepper } from './stepper';

interface TempoStepperProps {
  readonly label: ComponentChildren;
  readonly isLabelHidden?: boolean;
  readonly tempo: Tempo;
  readonly grouping: Grouping;
  readonly size?: 'normal' | 'stand';
  readonly onChange: (tempo: Tempo) => void;
}

export function TempoStepper({ tempo, grouping, onChange, ...rest }: TempoStepperProps) {
  return (
    <Stepper
      {...rest}
      value={markOf(tempo, grouping)}
      min={Math.ceil(SLOWEST / grouping)}
      max={Math.floor(FASTEST / grouping)}
      before={<BeatNote />}
      onChange={(mark) => onChange(tempoOf(mark, grouping))}
    />
  );
}
