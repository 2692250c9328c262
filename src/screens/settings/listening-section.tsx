/** Whether the app listens while one plays, and to what. */
import { useEffect } from 'preact/hooks';
import { ButtonLink } from '../../parts/button/button';
import { EarControl, hasMidi } from '../../parts/ear/ear-control';
import { preferences } from '../../preferences';
import { hrefOf } from '../../route';
import { midi } from '../../sound/midi-input';
import { Section } from './section';

export function ListeningSection() {
  useEffect(() => {
    if (preferences.peek().ear === 'midi') void midi.reconnect();
  }, []);
  return (
    <Section title="Listening">
      <p>
        With a digital piano or a MIDI keyboard the app hears a run, says where it waited and what
        was wrong, and proposes the rating; you decide. Nothing of it leaves this device, and no
        notes are kept, only measures.
      </p>
      {hasMidi() ? (
        <EarControl />
      ) : (
        <p class="soft">This browser has no Web MIDI; others on this device may.</p>
      )}
      <ButtonLink href={hrefOf('recording')} kind="quiet">
        Judge a recording (MIDI file)
      </ButtonLink>
    </Section>
  );
}
