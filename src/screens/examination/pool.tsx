/** What may be asked: starting notes, chords and stages of the programme. The last of each kind stays. */
import type { ComponentChildren } from 'preact';
import type { ExaminationSettings } from '../../../shared/log/examination';
import { askedStages, type Programme } from '../../../shared/log/programme';
import { CHORD_IDS } from '../../../shared/music/chords';
import { notesOf } from '../../../shared/planning/student';
import { FAMILIES } from '../../parts/chord-families';
import { noteText, wayText } from '../../parts/words';
import styles from './pool.module.css';

interface PoolProps {
  readonly programme: Programme;
  readonly settings: ExaminationSettings;
  readonly onChange: (part: Partial<ExaminationSettings>) => void;
}

export function Pool({ programme, settings, onChange }: PoolProps) {
  const { notes, chords, stages } = settings;
  return (
    <div class={styles.pool}>
      <Group legend="From">
        {notesOf(programme).map((note) => (
          <Check
            key={note}
            isOn={notes.includes(note)}
            isLast={notes.length === 1}
            onToggle={() => onChange({ notes: notesOf(programme).filter(toggled(notes, [note])) })}
          >
            <span class="music">{noteText(note)}</span>
          </Check>
        ))}
      </Group>
      <Group legend="Chords">
        {FAMILIES.map(([name, family]) => (
          <Check
            key={name}
            isOn={family.every((chord) => chords.includes(chord))}
            isLast={chords.every((chord) => family.includes(chord))}
            onToggle={() => onChange({ chords: CHORD_IDS.filter(toggled(chords, family)) })}
          >
            {name}
          </Check>
        ))}
      </Group>
      <Group legend="Played with">
        {askedStages(programme).map((stage) => (
          <Check
            key={stage}
            isOn={stages.includes(stage)}
            isLast={stages.length === 1}
            onToggle={() =>
              onChange({ stages: askedStages(programme).filter(toggled(stages, [stage])) })
            }
          >
            {wayText(stage)}
          </Check>
        ))}
      </Group>
    </div>
  );
}

/** Whether a value is chosen after some of them have changed sides together. */
function toggled<T>(chosen: readonly T[], some: readonly T[]): (value: T) => boolean {
  const wereOn = some.every((one) => chosen.includes(one));
  return (value) => (some.includes(value) ? !wereOn : chosen.includes(value));
}

function Group({
  legend,
  children,
}: {
  readonly legend: string;
  readonly children: ComponentChildren;
}) {
  return (
    <fieldset>
      <legend class={styles.legend}>{legend}</legend>
      <div class={styles.checks}>{children}</div>
    </fieldset>
  );
}

interface CheckProps {
  readonly isOn: boolean;
  readonly isLast: boolean;
  readonly onToggle: () => void;
  readonly children: ComponentChildren;
}

function Check({ isOn, isLast, onToggle, children }: CheckProps) {
  return (
    <label class={styles.check}>
      <input type="checkbox" checked={isOn} disabled={isOn && isLast} onChange={onToggle} />
      {children}
    </label>
  );
}
