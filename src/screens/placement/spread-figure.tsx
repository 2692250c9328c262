/** Stage by stage the tempo that is likely even, as a band: how wide it was before the runs, and how wide it is now. */
import type { ComponentChildren } from 'preact';
import { type Programme, targetOfMost } from '../../../shared/log/programme';
import { markOf, type Tempo } from '../../../shared/music/tempo';
import type { StageReach } from '../../../shared/planning/placement';
import { Mark } from '../../parts/stepper/beat-note';
import { wayText } from '../../parts/words';
import legend from '../../parts/legend.module.css';
import styles from './spread-figure.module.css';

interface SpreadFigureProps {
  readonly programme: Programme;
  readonly before: readonly StageReach[];
  readonly now: readonly StageReach[];
}

export function SpreadFigure({ programme, before, now }: SpreadFigureProps) {
  const { grouping } = programme;
  const targets = now.map(({ stage }) => targetOfMost(programme, stage));
  const ends = [...before, ...now].flatMap(({ low, high }) => [low, high]);
  const [least, most] = [Math.min(...ends, ...targets), Math.max(...ends, ...targets)];
  /** In per cent of the width; a doubling is equally wide everywhere. */
  const x = (tempo: Tempo): number => (100 * Math.log2(tempo / least)) / Math.log2(most / least);
  const band = ({ low, high }: StageReach) => ({ x: x(low), width: x(high) - x(low) });
  return (
    <figure class={styles.figure}>
      <ul class={styles.stages}>
        {now.map((stage, i) => (
          <li key={stage.stage} class={styles.stage}>
            <span class={styles.name}>{wayText(stage.stage)}</span>
            <span class={styles.reach}>
              <span class="spoken">likely even at </span>
              <Mark tempo={stage.tempo} grouping={grouping} />{' '}
              <span class={styles.between}>
                <span class="spoken">probably </span>
                {markOf(stage.low, grouping)} to {markOf(stage.high, grouping)}
              </span>
            </span>
            <svg
              class={styles.band}
              viewBox="0 0 100 10"
              preserveAspectRatio="none"
              aria-hidden="true"
            >
              <line class={styles.base} x1={0} x2={100} y1={5} y2={5} />
              {before[i] && <rect class={styles.before} {...band(before[i])} y={0} height={10} />}
              <rect class={styles.now} {...band(stage)} y={2} height={6} />
              <line class={styles.target} x1={x(targets[i]!)} x2={x(targets[i]!)} y1={0} y2={10} />
            </svg>
          </li>
        ))}
      </ul>
      <figcaption class={legend.legend}>
        <Sign name="likely even, now">
          <rect class={styles.now} x={0} y={2} width={24} height={6} />
        </Sign>
        <Sign name="before these runs">
          <rect class={styles.before} x={0} y={0} width={24} height={10} />
        </Sign>
        <Sign name="asked">
          <line class={styles.target} x1={12} x2={12} y1={0} y2={10} />
        </Sign>
      </figcaption>
    </figure>
  );
}

function Sign({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <span class={legend.sign}>
      <svg class={styles.sample} viewBox="0 0 24 10" aria-hidden="true">
        {children}
      </svg>
      {name}
    </span>
  );
}
