/** How to have the app like a program of the device. Nothing once it is. */
import { Button } from '../../parts/button/button';
import { canInstall, install } from '../../install';
import { Section } from './section';

/** Only Safari has this event, and every browser on iOS is one underneath. */
const isSafari = (): boolean => 'GestureEvent' in globalThis;

export function InstallSection() {
  if (matchMedia('(display-mode: standalone)').matches) return null;
  const isOffered = canInstall.value !== null;
  if (!isOffered && !isSafari()) return null;
  return (
    <Section title="Install">
      <p>
        Installed, it opens from the device’s own screen without the browser around it, and what it
        keeps is safer.
      </p>
      {isOffered ? (
        <Button onClick={() => void install()}>Install the app</Button>
      ) : (
        <p>
          Save a backup first. Then Share, and Add to Home Screen (on a Mac: Add to Dock). The
          installed app has a record of its own: restore the backup there.
        </p>
      )}
    </Section>
  );
}
