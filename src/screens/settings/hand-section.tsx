/** How far the hand reaches: fingerings and cautions are made for it. */
import { AVERAGE_SPAN, LARGEST_SPAN, SMALLEST_SPAN } from '../../../shared/music/fingering/spans';
import { Button } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { Stepper } from '../../parts/stepper/stepper';
import { useStore } from '../../store-context';
import { Section } from './section';

/** From SMALLEST_SPAN semitones upwards. */
const REACHES = [
  'a fifth',
  'a minor sixth',
  'a major sixth',
  'a minor seventh',
  'a major seventh',
  'an octave',
  'a minor ninth',
  'a major ninth',
  'a minor tenth',
  'a major tenth',
  'an eleventh',
  'an augmented eleventh',
  'a twelfth',
];

export function HandSection() {
  const store = useStore();
  const { span } = store.student.value;
  const save = async (semitones: number | null) => {
    try {
      await store.record([{ kind: 'span', semitones }]);
    } catch (error) {
      say(error instanceof Error ? error.message : 'The reach of the hand could not be saved.');
    }
  };
  const shown = span ?? AVERAGE_SPAN;
  return (
    <Section title="Hand">
      <Stepper
        label="Widest comfortable reach, thumb to fifth finger"
        value={shown}
        min={SMALLEST_SPAN}
        max={LARGEST_SPAN}
        unit={`semitones: ${REACHES[shown - SMALLEST_SPAN]}`}
        onChange={(semitones) => void save(semitones)}
      />
      <p class="soft">
        {span === null
          ? 'An average hand is assumed. Try it on the keys, without forcing: what hurts is too wide.'
          : 'Fingerings and cautions are made for this hand.'}
      </p>
      {span !== null && (
        <p>
          <Button kind="quiet" onClick={() => void save(null)}>
            Assume an average hand
          </Button>
        </p>
      )}
    </Section>
  );
}
