/** Whether the app listens while one plays, and to what. */
import { useEffect } from 'preact/hooks';
import { ButtonLink } from '../../parts/button/button';
import { hasMidi, wakeEar } from '../../parts/ear/ear';
import { EarControl } from '../../parts/ear/ear-control';
import { MicrophoneCheck } from '../../parts/ear/microphone-check';
import { TurnerChoice } from '../../parts/ear/turner-choice';
import { preferences } from '../../preferences';
import { hrefOf } from '../../route';
import { microphone } from '../../sound/microphone';
import { change } from './change';
import { PianoKeysPart } from './piano-keys-part';
import { Section } from './section';

export function ListeningSection() {
  useEffect(wakeEar, []);
  const { ear, turner: turns, beat } = preferences.value;
  const isByMicrophone = ['ready', 'open'].includes(microphone.state.value);
  return (
    <Section title="Listening">
      <p>
        With a digital piano or a MIDI keyboard, or by the microphone with any piano, the app hears
        a run, says where it waited and what was wrong, and proposes the rating; you decide. Nothing
        of it leaves this device, and neither sound nor notes are kept, only measures.
      </p>
      <p class="soft">
        A keyboard is heard exactly: each note lights up as it is played, and without a beat, or
        with one that is only seen, the page can turn with you. By the microphone the page can turn
        with you as well, and a note lights up about a third of a second after it was played; what
        was wrong is only told afterwards. Neither loudness nor extra notes are heard, the pedal
        should be up, and what is not sure is not counted: with both hands, some upper notes. While
        you play, the upper note lights up with the lower one unless nothing of it is heard.
      </p>
      <EarControl />
      {ear !== 'none' && (
        <>
          <TurnerChoice onChange={(turner) => change({ turner })} />
          {ear === 'midi' && turns === 'player' && beat === 'heard' && (
            <p class="soft">
              While the beat is heard it turns the page: it turns with you once the beat is only
              seen, or off.
            </p>
          )}
        </>
      )}
      {isByMicrophone && <MicrophoneCheck />}
      {!hasMidi() && <p class="soft">This browser has no Web MIDI; others on this device may.</p>}
      <ButtonLink href={hrefOf('recording')} kind="quiet">
        Judge a recording (MIDI file)
      </ButtonLink>
      <PianoKeysPart />
    </Section>
  );
}
