import { Choice } from '../../parts/choice/choice';
import { type Preferences, preferences, THEMES } from '../../preferences';
import { change } from './change';
import { Section } from './section';

const NAMES: Readonly<Record<Preferences['theme'], string>> = {
  system: 'as the device',
  light: 'light',
  dark: 'dark',
};

export function ThemeSection() {
  return (
    <Section title="Page">
      <Choice<Preferences['theme']>
        legend="Light or dark"
        options={THEMES.map((value) => ({ value, label: NAMES[value] }))}
        value={preferences.value.theme}
        onChange={(theme) => change({ theme })}
      />
    </Section>
  );
}
