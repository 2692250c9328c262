/** Dry, or with the sustaining pedal. */
import { Choice } from '../../parts/choice/choice';

const OPTIONS = [
  { value: 'dry', label: 'dry' },
  { value: 'pedal', label: 'with pedal' },
] as const;

interface PedalChoiceProps {
  readonly pedal: boolean;
  readonly onChange: (pedal: boolean) => void;
}

export const PedalChoice = ({ pedal, onChange }: PedalChoiceProps) => (
  <Choice
    legend="Pedal"
    options={OPTIONS}
    value={pedal ? 'pedal' : 'dry'}
    onChange={(value) => onChange(value === 'pedal')}
  />
);
