import { say } from '../../parts/notice/notice';
import { prefer, type Preferences } from '../../preferences';

/** Changes preferences; says so if the device could not keep them. */
export function change(preferences: Partial<Preferences>): void {
  prefer(preferences).catch(() =>
    say('This holds until the page is left: the device could not keep it.'),
  );
}
