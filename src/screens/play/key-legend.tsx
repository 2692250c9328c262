/** Which keys of the piano act now, drawn and in words. Nothing where none was learnt or no keyboard is connected. */
import { Fragment } from 'preact';
import { MarkedKeys } from '../../parts/keyboard/marked-keys';
import { actionText, type KeyAction, learntKeys, signOf } from '../../parts/piano-keys';
import { preferences } from '../../preferences';
import { midi } from '../../sound/midi-input';
import styles from './key-legend.module.css';

interface KeyLegendProps {
  readonly actions: readonly KeyAction['kind'][];
}

export function KeyLegend({ actions }: KeyLegendProps) {
  const { pianoKeys, holdsPedal } = preferences.value;
  const keys = learntKeys(pianoKeys).filter(({ action }) => actions.includes(action.kind));
  const hasPedal = holdsPedal && actions.includes('forward');
  if (midi.state.value !== 'connected' || (keys.length === 0 && !hasPedal)) return null;
  return (
    <div class={styles.legend}>
      {keys.length > 0 && (
        <MarkedKeys marks={keys.map((key) => ({ midi: key.midi, sign: signOf(key.action) }))} />
      )}
      <p class={styles.words}>
        <span>On the piano:</span>{' '}
        {keys.map(({ midi: key, action }) => (
          <Fragment key={key}>
            <span class={styles.pair}>
              {signOf(action)} {actionText(action)}
            </span>{' '}
          </Fragment>
        ))}
        {hasPedal && <span class={styles.pair}>pedal held down: on</span>}
      </p>
    </div>
  );
}
