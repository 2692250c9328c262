/** What the teacher does goes into the log at once, and every step can be undone. */
import type { EventBody } from '../../../shared/log/events';
import { say } from '../../parts/notice/notice';
import type { Store } from '../../store/store';

interface Act {
  readonly body: EventBody;
  readonly said: string;
  /** What undoes it, where the body is a correction itself: that cannot be voided. */
  readonly back?: EventBody;
}

export async function act(store: Store, { body, said, back }: Act): Promise<void> {
  try {
    const [event] = await store.record([body]);
    const undo = async () => {
      try {
        await store.record([back ?? { kind: 'void', events: [event!.id] }]);
        say('Undone.');
      } catch {
        say('This could not be undone now.', { label: 'Try again', do: () => void undo() });
      }
    };
    say(said, { label: 'Undo', do: () => void undo() });
  } catch (error) {
    say(error instanceof Error ? error.message : 'This could not be saved.');
  }
}
