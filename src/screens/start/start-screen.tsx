/** The first screen of a new student: a programme in under a minute, or a backup, or a look round. */
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { LONGEST_NAME } from '../../../shared/formats/event';
import type { EventBody } from '../../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../../shared/log/programme';
import { Button } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { ProgrammeForm } from '../../parts/programme-form/programme-form';
import { OpenFile } from '../../parts/open-file/open-file';
import { go, hrefOf, replace } from '../../route';
import { lookRound, useStore } from '../../store-context';
import styles from './start-screen.module.css';

export function StartScreen() {
  const store = useStore();
  const [programme, setProgramme] = useState(DEFAULT_PROGRAMME);
  const known = store.student.peek().name ?? '';
  const [name, setName] = useState(known);
  const [failure, setFailure] = useState<string | null>(null);
  const nameId = useId();
  const others = useRef<HTMLDivElement>(null);
  const isSet = store.student.value.programme !== null;
  // In place of this screen: whoever came back here would put another programme in the place of theirs.
  useEffect(() => {
    if (isSet) replace('today');
  }, [isSet]);

  const begin = async () => {
    const given = name.trim();
    const bodies: EventBody[] = [{ kind: 'programme', programme }];
    if (given !== known) bodies.push({ kind: 'name', name: given });
    try {
      await store.record(bodies);
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };

  return (
    <Page
      title="Arpeggios, a little every day"
      lit={programme.notes}
      note="Say what you practise for. From that comes a short list for each day, with a tempo and a reason for everything on it. All of it stays on this device, and can be changed later."
    >
      <p class={styles.ways}>
        <Button kind="quiet" onClick={() => others.current?.scrollIntoView()}>
          Here before, or only looking?
        </Button>
      </p>
      <ProgrammeForm value={programme} onChange={setProgramme} today={store.today.value} />
      <div class={styles.name}>
        <label for={nameId} class={styles.label}>
          What the student is called, for the report (may stay empty)
        </label>
        <input
          id={nameId}
          type="text"
          autocomplete="off"
          maxLength={LONGEST_NAME}
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </div>
      <p class={styles.care}>
        Slow and even comes first. Pain: stop. <a href={hrefOf('help')}>About care for the hands</a>
      </p>
      {failure !== null && <p role="alert">{failure}</p>}
      <div class={styles.bar}>
        <Button kind="main" size="stand" onClick={() => void begin()}>
          Make today’s list
        </Button>
      </div>
      <div ref={others}>
        <Others />
      </div>
    </Page>
  );
}

function Others() {
  const [isOpening, setOpening] = useState(false);
  const look = async () => {
    setOpening(true);
    try {
      await lookRound();
    } catch {
      setOpening(false);
      say('The invented student could not be loaded. Without a network it needs the app stored.');
    }
  };
  return (
    <div class={styles.others}>
      <section>
        <h2>Here before?</h2>
        <p>Take the record in from a backup file, or a programme that your teacher gave you.</p>
        <OpenFile
          onTakenIn={(said) => {
            say(said);
            go('today');
          }}
        />
      </section>
      <section>
        <h2>Only looking?</h2>
        <p>See everything with an invented student, who has practised for ten weeks.</p>
        <Button disabled={isOpening} onClick={() => void look()}>
          {isOpening ? 'Inventing the ten weeks…' : 'Look round'}
        </Button>
      </section>
    </div>
  );
}
