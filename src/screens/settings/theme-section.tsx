import { Choice } from '../../parts/choice/choice';
import { KEY_SIGNATURES, PICTURES, type Preferences, preferences, THEMES } from '../../preferences';
import { change } from './change';
import { Section } from './section';

const NAMES: Readonly<Record<Preferences['theme'], string>> = {
  system: 'as the device',
  light: 'light',
  dark: 'dark',
};

const PICTURE_NAMES: Readonly<Record<Preferences['picture'], string>> = {
  keys: 'keys and fingers',
  staff: 'notes on the staff',
};

const KEY_NAMES: Readonly<Record<Preferences['keySignature'], string>> = {
  none: 'none',
  own: 'of the key of each chord',
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
      <Choice<Preferences['picture']>
        legend="Shown while playing"
        options={PICTURES.map((value) => ({ value, label: PICTURE_NAMES[value] }))}
        value={preferences.value.picture}
        onChange={(picture) => change({ picture })}
      />
      <Choice<Preferences['keySignature']>
        legend="Key signature on the staff"
        options={KEY_SIGNATURES.map((value) => ({ value, label: KEY_NAMES[value] }))}
        value={preferences.value.keySignature}
        onChange={(keySignature) => change({ keySignature })}
      />
    </Section>
  );
}
