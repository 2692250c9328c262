/** For a day on which a hand hurts: the list is then made anew, with care. */
import type { Sore } from '../../../shared/planning/care';
import type { DayList } from '../../day/day-list';
import { Choice } from '../../parts/choice/choice';
import { hrefOf } from '../../route';
import styles from './sore-today.module.css';

const OPTIONS: readonly { readonly value: Sore | 'none'; readonly label: string }[] = [
  { value: 'none', label: 'none' },
  { value: 'right', label: 'right' },
  { value: 'left', label: 'left' },
  { value: 'both', label: 'both' },
];

export function SoreToday({ list }: { readonly list: DayList }) {
  const sore = list.sore.value;
  return (
    <details class={styles.sore} open={sore !== null} data-screen-only>
      <summary>Sore today?</summary>
      <Choice
        legend="A hand that is to rest"
        options={OPTIONS}
        value={sore ?? 'none'}
        onChange={(value) => list.setSore(value === 'none' ? null : value)}
      />
      <p>
        A hand that hurts does not play. The list goes to the other one, slowly, and to the head;
        nothing is to be made up for. Pain, tingling or numbness that comes back or lasts belongs to
        a doctor: see <a href={hrefOf('help')}>Help</a>, and tell your teacher.
      </p>
    </details>
  );
}
