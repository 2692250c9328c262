/** What the probes have shown: the reach of each stage with its spread, and where the programme would begin. */
import type { Programme } from '../../../shared/log/programme';
import { stageIndex } from '../../../shared/music/deck';
import {
  placedStage,
  PROBES,
  type StageReach,
  stageReaches,
} from '../../../shared/planning/placement';
import { Button, ButtonLink } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { wayText } from '../../parts/words';
import { placementOf } from '../../day/placement';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import styles from './placement-screen.module.css';
import { SpreadFigure } from './spread-figure';

interface FoundProps {
  readonly programme: Programme;
  readonly before: readonly StageReach[];
  readonly onGoOn: () => void;
}

export function Found({ programme, before, onGoOn }: FoundProps) {
  const store = useStore();
  const runs = placementOf(store).probes.value.length;
  const { learner } = store.student.value;
  const today = store.today.value;
  const stages = stageReaches(learner, programme, today);
  const placed = placedStage(learner, programme, today);
  return (
    <Page
      title="Where you are"
      lit={programme.notes}
      note={runs === 1 ? 'After one run' : `After ${runs} runs`}
    >
      <SpreadFigure programme={programme} before={before} now={stages} />
      <div class={styles.text}>
        <p>
          {spreadText(before, stages)} It is a first estimate: each rating from now on corrects it.
        </p>
        <p>
          {stageIndex(placed) === 0
            ? 'The list would begin with the first stage: '
            : 'At half of what is asked, all is likely even up to this stage, where the list would begin: '}
          <strong>{wayText(placed)}</strong>.{' '}
          {programme.reached === placed
            ? 'The programme says so already.'
            : `The programme says: ${wayText(programme.reached)}.`}
        </p>
      </div>
      <div class={styles.actions}>
        {programme.reached !== placed && <Change programme={programme} placed={placed} />}
        <ButtonLink
          kind={programme.reached === placed ? 'main' : 'plain'}
          size="stand"
          href={hrefOf('today')}
        >
          To today’s list
        </ButtonLink>
        {runs < PROBES && (
          <Button size="stand" onClick={onGoOn}>
            Go on with run {runs + 1} of {PROBES}
          </Button>
        )}
      </div>
    </Page>
  );
}

interface ChangeProps {
  readonly programme: Programme;
  readonly placed: Programme['reached'];
}

function Change({ programme, placed }: ChangeProps) {
  const store = useStore();
  const begin = async () => {
    try {
      const changed = { ...programme, reached: placed };
      const [event] = await store.record([{ kind: 'programme', programme: changed }]);
      const undo = async () => {
        try {
          await store.record([{ kind: 'void', events: [event!.id] }]);
          say('Undone: the programme is as it was.');
        } catch {
          say('This could not be undone now.', { label: 'Try again', do: () => void undo() });
        }
      };
      say('The programme begins there. What was played stays.', {
        label: 'Undo',
        do: () => void undo(),
      });
    } catch (error) {
      say(error instanceof Error ? error.message : 'The programme could not be saved.');
    }
  };
  return (
    <Button kind="main" size="stand" onClick={() => void begin()}>
      Begin there
    </Button>
  );
}

/** Mean of what one standard deviation above the reach adds to it. */
const spreadOf = (stages: readonly StageReach[]): number =>
  2 ** (stages.reduce((sum, { tempo, high }) => sum + Math.log2(high / tempo), 0) / stages.length) -
  1;

const percent = (share: number): string => `${Math.round(100 * share)} per cent`;

function spreadText(before: readonly StageReach[], now: readonly StageReach[]): string {
  return `Before, the tempo of an arpeggio was known to within ${percent(spreadOf(before))}; now to within ${percent(spreadOf(now))}.`;
}
