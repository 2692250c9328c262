/** Under the rating: what was heard of the run. The person decides all the same. */
import { useMemo } from 'preact/hooks';
import type { RunTake } from '../../../shared/log/run-take';
import type { Item } from '../../../shared/music/deck';
import type { Tempo } from '../../../shared/music/tempo';
import { itemScore } from '../../parts/item-score';
import { TakePicture } from '../../parts/take/take-picture';
import { TakeFigures, TakeWords } from '../../parts/take/take-words';
import { useStore } from '../../store-context';
import styles from './heard-run.module.css';

interface HeardProps {
  readonly take: RunTake;
  readonly item: Item;
  readonly tempo: Tempo;
}

function useScore({ item, tempo }: HeardProps) {
  const student = useStore().student.value;
  return useMemo(() => itemScore(student, item, tempo), [student, item, tempo]);
}

export function HeardRun(props: HeardProps) {
  const { take } = props;
  const score = useScore(props);
  return (
    <section class={styles.heard} aria-labelledby="heard">
      <h2 id="heard">Heard</h2>
      <TakeWords take={take} score={score} />
      <TakePicture take={take} score={score} />
      <TakeFigures take={take} score={score} />
    </section>
  );
}

/** In a round there is room for the words only. */
export function HeardInRound(props: HeardProps) {
  return <TakeWords take={props.take} score={useScore(props)} />;
}
