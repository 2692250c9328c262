import { useState } from 'preact/hooks';
import type { Programme } from '../../../shared/log/programme';
import { Button } from '../button/button';
import { say } from '../notice/notice';
import styles from './programme-form.module.css';
import { CHECK_BOOKLET, type Standard, STANDARDS, withStandard } from './standards';

interface StandardListProps {
  readonly value: Programme;
  readonly onChange: (programme: Programme) => void;
}

const tempoText = ({ mark, grouping }: Standard): string =>
  mark === null ? 'no tempo named' : `${mark}, ${grouping === 3 ? 'three' : 'four'} notes a beat`;

/** Published standards, folded away: few programmes begin from one. */
export function StandardList({ value, onChange }: StandardListProps) {
  const [isOpen, setOpen] = useState(false);
  const begin = (standard: Standard) => {
    onChange(withStandard(value, standard));
    setOpen(false);
    say(`Stages, chords, tempo and words are set. ${CHECK_BOOKLET}`);
  };
  return (
    <details
      class={styles.standards}
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>Begin from what an examination asks</summary>
      <p>Stages, chords, tempo and words come from published lists.</p>
      <ul>
        {STANDARDS.map((standard) => (
          <li key={`${standard.source} ${standard.title}`} class={styles.standard}>
            <p>
              {standard.title}: {tempoText(standard)}.
            </p>
            <p class="small soft">
              Source: {standard.source}, {standard.year ?? 'no year given'}. {CHECK_BOOKLET}
            </p>
            <Button onClick={() => begin(standard)}>
              Begin from this <span class="spoken">: {standard.title}</span>
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
