/** The other drills for the same hand of the same arpeggio. */
import {
  type DrillAddress,
  DRILL_KINDS,
  DRILL_NAMES,
  type DrillId,
} from '../../../shared/planning/drills/kinds';
import { hrefOf } from '../../route';
import styles from './drill-screen.module.css';

export function OtherDrills({ address }: { readonly address: DrillAddress }) {
  const { item, hand } = address;
  const others = DRILL_KINDS.filter((kind) => kind !== address.kind);
  return (
    <section class={styles.others}>
      <h2>Other drills for this hand</h2>
      <ul>
        {others.map((kind) => {
          const id: DrillId = `${item.arpeggio}.${hand}.${kind}`;
          return (
            <li key={kind}>
              <a href={hrefOf('drill', id)}>{DRILL_NAMES[kind]}</a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
