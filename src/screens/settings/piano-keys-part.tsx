/** Learns keys of a MIDI keyboard that rate and go on, so that the hands need not leave the piano. */
import { useEffect, useState } from 'preact/hooks';
import { FLUENCIES } from '../../../shared/log/events';
import { Button } from '../../parts/button/button';
import { MarkedKeys } from '../../parts/keyboard/marked-keys';
import { say } from '../../parts/notice/notice';
import { actionText, learntKeys, pianoKeyName, signOf } from '../../parts/piano-keys';
import { preferences } from '../../preferences';
import { midi } from '../../sound/midi-input';
import { change } from './change';
import { type Lesson, LESSONS, learn, nothingLearnt } from './piano-keys';
import styles from './settings-screen.module.css';

export function PianoKeysPart() {
  const { pianoKeys, holdsPedal } = preferences.value;
  const isConnected = midi.state.value === 'connected';
  const learnt = learntKeys(pianoKeys);
  if (!isConnected && learnt.length === 0 && !holdsPedal) return null;
  return (
    <>
      <h3>Keys of the piano that rate and go on</h3>
      <p>
        After a run the hands can stay on the piano: a key for each level rates it, another goes on.
        They act only while nothing is being played, and only when no other key is touched; take
        keys at an end of the keyboard.
      </p>
      {learnt.length > 0 && (
        <>
          <MarkedKeys marks={learnt.map((key) => ({ midi: key.midi, sign: signOf(key.action) }))} />
          <p class="soft">
            {learnt
              .map(
                ({ midi: key, action }) =>
                  `${signOf(action)} ${actionText(action)} (${pianoKeyName(key)})`,
              )
              .join(', ')}
          </p>
        </>
      )}
      {isConnected ? (
        <Lessons />
      ) : (
        <p>
          No keyboard is connected now, so these keys do nothing; buttons and pedal work as ever.
        </p>
      )}
      <label class={styles.check}>
        <input
          type="checkbox"
          checked={holdsPedal}
          onChange={(event) => change({ holdsPedal: event.currentTarget.checked })}
        />
        The sustain pedal, held down for a second, means “on”
      </label>
      {learnt.length > 0 && (
        <Button kind="quiet" onClick={() => change({ pianoKeys: nothingLearnt })}>
          Forget these keys
        </Button>
      )}
    </>
  );
}

function Lessons() {
  /** What is being learnt, and how many keys of it have been. */
  const [learning, setLearning] = useState<{ lesson: Lesson; known: readonly number[] } | null>(
    null,
  );
  useEffect(() => {
    if (learning === null) return undefined;
    return midi.listen((message) => {
      if (message.kind !== 'struck') return;
      const answer = learn(learning.lesson, [...learning.known, message.midi], preferences.peek());
      if (answer.kind === 'refused') {
        say(`${pianoKeyName(message.midi)} cannot be learnt: ${answer.why}.`);
      } else if (answer.kind === 'more') {
        setLearning({ ...learning, known: [...learning.known, message.midi] });
      } else {
        change({ pianoKeys: answer.pianoKeys });
        say('Learnt.');
        setLearning(null);
      }
    });
  }, [learning]);
  return (
    <div class={styles.row}>
      {LESSONS.map(({ lesson, label }) => (
        <Button
          key={lesson}
          aria-pressed={learning?.lesson === lesson}
          onClick={() => setLearning(learning?.lesson === lesson ? null : { lesson, known: [] })}
        >
          {label}
        </Button>
      ))}
      <p role="status">{learning && promptOf(learning.lesson, learning.known.length)}</p>
    </div>
  );
}

function promptOf(lesson: Lesson, known: number): string {
  if (lesson === 'block') return `Press the lowest of them now, for “${FLUENCIES[0]}”.`;
  if (lesson === 'levels') return `Press the key for “${FLUENCIES[known]!}” now.`;
  return `Press the key for “${actionText({ kind: lesson })}” now.`;
}
