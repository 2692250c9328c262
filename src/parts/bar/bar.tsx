/** A bar beside its number, 0 to 1. Drawn, so that it is printed too where backgrounds are left out. */
import styles from './bar.module.css';

export const Bar = ({ share }: { readonly share: number }) => (
  <svg class={styles.bar} viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
    <rect class={styles.fill} x={0} y={0} width={100 * share} height={10} />
    <line class={styles.base} x1={0} x2={0} y1={0} y2={10} />
  </svg>
);
