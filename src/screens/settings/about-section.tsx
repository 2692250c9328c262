import { version } from '../../../package.json';
import { hrefOf } from '../../route';
import { Section } from './section';

export function AboutSection() {
  const isStored = navigator.serviceWorker?.controller !== null;
  return (
    <Section title="About">
      <p>
        Arpeggiary {version}.{' '}
        {isStored
          ? 'Stored on this device: it works without a network.'
          : 'Not stored on this device yet: it still needs the network.'}{' '}
        Nothing leaves the device unless you send it.
      </p>
      <p>
        <a href={hrefOf('help')}>How it works, keys and pedals, care for the body</a>
      </p>
    </Section>
  );
}
