/** What notes are called. */
import { BLACK_NOTES, type BlackNote } from '../../../shared/music/deck';
import { displayName, NAME_STYLES, type NameStyle } from '../../../shared/music/names';
import { bottomNames } from '../../../shared/music/spelling';
import { Choice } from '../../parts/choice/choice';
import { preferences } from '../../preferences';
import { change } from './change';
import { Section } from './section';
import styles from './settings-screen.module.css';

const SCALE = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];
const STYLE_NAMES: Readonly<Record<NameStyle, string>> = {
  letters: 'letters',
  german: 'German',
  syllables: 'fixed do',
};

export function NamesSection() {
  const { nameStyle } = preferences.value;
  return (
    <Section title="Note names">
      <Choice<NameStyle>
        legend="Written as"
        options={NAME_STYLES.map((value) => ({ value, label: STYLE_NAMES[value] }))}
        value={nameStyle}
        onChange={(style) => change({ nameStyle: style })}
      />
      <p class="music">{SCALE.map((name) => displayName(name, nameStyle)).join(' ')}</p>
      <p class="soft">
        A black starting note takes the name that gives a chord the simpler key. Or always the same:
      </p>
      <div class={styles.stack}>
        {BLACK_NOTES.map((note) => (
          <BlackName key={note} note={note} />
        ))}
      </div>
    </Section>
  );
}

function BlackName({ note }: { readonly note: BlackNote }) {
  const { nameStyle, blackNames } = preferences.value;
  const [sharp, flat] = bottomNames(note).map((name) => displayName(name, nameStyle));
  const { [note]: _, ...others } = blackNames;
  return (
    <Choice<'chord' | 'sharp' | 'flat'>
      legend={`${sharp!} or ${flat!}`}
      isLegendHidden
      options={[
        { value: 'chord', label: 'by the chord' },
        { value: 'sharp', label: sharp! },
        { value: 'flat', label: flat! },
      ]}
      value={blackNames[note] ?? 'chord'}
      onChange={(name) =>
        change({ blackNames: name === 'chord' ? others : { ...others, [note]: name } })
      }
    />
  );
}
