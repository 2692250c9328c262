import type { ComponentChildren } from 'preact';
import styles from './section.module.css';

interface SectionProps {
  readonly title: string;
  readonly children: ComponentChildren;
}

/** One subject of the settings, under a rule. */
export function Section({ title, children }: SectionProps) {
  return (
    <section class={styles.section}>
      <h2>{title}</h2>
      <div class={styles.body}>{children}</div>
    </section>
  );
}
