/** Keys of a page-turner pedal that sends others than the usual ones. */
import { useEffect, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { change } from './change';
import { keyName, learnable } from './pedal-keys';
import { Section } from './section';
import styles from './settings-screen.module.css';

type Direction = 'forwardKeys' | 'backKeys';

const WORDS: Readonly<Record<Direction, string>> = { forwardKeys: 'On', backKeys: 'Back' };

export function PedalSection() {
  const [learning, setLearning] = useState<Direction | null>(null);
  useEffect(() => {
    if (learning === null) return undefined;
    const onKey = (event: KeyboardEvent) => {
      event.preventDefault();
      if (event.repeat) return;
      setLearning(null);
      if (event.key !== 'Escape') learn(learning, event.key);
    };
    // Before any control of the page: a pedal may send Enter, which would press the button again.
    addEventListener('keydown', onKey, { capture: true });
    return () => removeEventListener('keydown', onKey, { capture: true });
  }, [learning]);
  return (
    <Section title="Pedal and keys">
      <p>
        On: page down, right, down, space or enter. Back: page up, left or up. Most page-turner
        pedals send one of these; another one can be learnt here.
      </p>
      {(['forwardKeys', 'backKeys'] as const).map((direction) => (
        <div key={direction} class={styles.row}>
          <Button
            aria-pressed={learning === direction}
            onClick={() => setLearning(learning === direction ? null : direction)}
          >
            {learning === direction
              ? 'Press the pedal now'
              : `Learn a key for “${WORDS[direction]}”`}
          </Button>
          {preferences.value[direction].map((key) => (
            <Button
              key={key}
              kind="quiet"
              onClick={() =>
                change({
                  [direction]: preferences.value[direction].filter((other) => other !== key),
                })
              }
            >
              Forget {keyName(key)}
            </Button>
          ))}
        </div>
      ))}
    </Section>
  );
}

function learn(direction: Direction, key: string): void {
  const answer = learnable(key, preferences.value);
  if (answer !== 'new') {
    say(`${keyName(key)} cannot be learnt: ${answer}.`);
    return;
  }
  change({ [direction]: [...preferences.value[direction], key] });
  say(`${keyName(key)} now means “${WORDS[direction].toLowerCase()}”.`);
}
