/** The programme in words, and the form behind it. */
import { useState } from 'preact/hooks';
import { deckOf } from '../../../shared/learning/readiness';
import type { Programme } from '../../../shared/log/programme';
import { Button, ButtonLink } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { GiveProgramme } from '../../parts/programme-offer/give-programme';
import { ProgrammeForm } from '../../parts/programme-form/programme-form';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { programmeText } from '../../parts/programme-text';
import { outlookText } from './outlook';
import { Section } from './section';
import styles from './settings-screen.module.css';

export function ProgrammeSection() {
  const store = useStore();
  const { programme } = store.student.value;
  const [draft, setDraft] = useState<Programme | null>(null);
  const [isGiving, setGiving] = useState(false);
  if (programme === null) {
    return (
      <Section title="Programme">
        <ButtonLink href={hrefOf('start')}>Set the programme</ButtonLink>
      </Section>
    );
  }

  const save = async (changed: Programme) => {
    try {
      await store.record([{ kind: 'programme', programme: changed }]);
      setDraft(null);
      say('Programme saved. Today’s list follows it.');
    } catch (error) {
      say(error instanceof Error ? error.message : 'The programme could not be saved.');
    }
  };

  if (draft === null) {
    return (
      <Section title="Programme">
        <p>{programmeText(programme, deckOf(programme).length)}</p>
        {programme.requirements !== undefined && (
          <p class={styles.words}>{programme.requirements}</p>
        )}
        <div class={styles.row}>
          <Button onClick={() => setDraft(programme)}>Change the programme</Button>
          <Button onClick={() => setGiving(true)}>Give it to somebody…</Button>
        </div>
        <a href={hrefOf('placement')}>Find out where you are: ten runs, about six minutes</a>
        <a href={hrefOf('programme')}>Open a programme from a QR code, a link or a file</a>
        <GiveProgramme
          programme={programme}
          name={store.student.value.name}
          today={store.today.value}
          isOpen={isGiving}
          onClose={() => setGiving(false)}
        />
      </Section>
    );
  }
  return (
    <Section title="Programme">
      <ProgrammeForm
        value={draft}
        onChange={setDraft}
        today={store.today.value}
        outlook={outlookText(store.student.value, draft, store.today.value)}
      />
      {draft.reached !== programme.reached && (
        <p>
          With another stage reached, every arpeggio starts again from there; its runs and its reach
          stay.
        </p>
      )}
      <div class={styles.row}>
        <Button kind="main" onClick={() => void save(draft)}>
          Save the programme
        </Button>
        <Button kind="quiet" onClick={() => setDraft(null)}>
          Leave it as it was
        </Button>
      </div>
    </Section>
  );
}
