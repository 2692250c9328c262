/**
 * What turns the page while a run is heard: the beat (without one, the hand), or the player's own playing.
 *
 * <TurnerChoice onChange={(turner) => change({ turner })} />
 */
import { preferences, type Preferences } from '../../preferences';
import { Choice } from '../choice/choice';

interface TurnerChoiceProps {
  readonly onChange: (turner: Preferences['turner']) => void;
}

export function TurnerChoice({ onChange }: TurnerChoiceProps) {
  const { beat, turner } = preferences.value;
  return (
    <Choice<Preferences['turner']>
      legend="The page turns"
      options={[
        { value: 'beat', label: beat === 'off' ? 'by hand' : 'by the beat' },
        { value: 'player', label: 'with you' },
      ]}
      value={turner}
      onChange={onChange}
    />
  );
}
