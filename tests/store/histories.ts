/** Random histories of a student: runs, corrections of earlier events, programmes, names, items set aside, remarks. */
import { addDays } from '../../shared/log/day';
import type { EventBody, Fluency, LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { chordOf } from '../../shared/music/chords';
import { DECK, itemOf, STAGES } from '../../shared/music/deck';
import type { Finger } from '../../shared/music/fingering/types';
import { event, START } from '../learning/events';
import { fc } from '../learning/property';

/** What happens next: something recorded, or, at a correction, how many events back it reaches. */
export type Deed = EventBody | { readonly kind: 'undo'; readonly back: number };

const item = fc.nat(DECK.length - 1).map((index) => DECK[index]!.id);

const run = fc.record({
  kind: fc.constant('run' as const),
  item,
  tempo: fc.integer({ min: 40, max: 600 }),
  fluency: fc.constantFrom<Fluency[]>(0, 1, 2, 3, 4),
  pedal: fc.boolean(),
  judge: fc.constantFrom('player' as const, 'teacher' as const),
  entry: fc.option(fc.constantFrom('d.right.2.1', 'eb.left.2.2', 'c.together.4.1')),
});

export const deed: fc.Arbitrary<Deed> = fc.oneof(
  { weight: 8, arbitrary: run },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const), back: fc.nat(30) }) },
  fc.constantFrom(...STAGES).map((reached): Deed => {
    return { kind: 'programme', programme: { ...DEFAULT_PROGRAMME, reached } };
  }),
  fc.string({ maxLength: 5 }).map((name): Deed => ({ kind: 'name', name })),
  fc.tuple(item, fc.boolean()).map(([id, aside]): Deed => ({ kind: 'aside', item: id, aside })),
  fc.string({ maxLength: 9 }).map((text): Deed => ({ kind: 'remark', about: null, text })),
  fc
    .tuple(item, fc.constantFrom('right' as const, 'left' as const), fc.boolean())
    .map(([id, hand, isChosen]): Deed => {
      const { arpeggio, chord } = itemOf(id);
      const pattern = chordOf(chord).intervals.map((_, i) => (i + 1) as Finger);
      const plan = isChosen ? { low: [1 as const], pattern, high: [5 as const] } : null;
      return { kind: 'fingering', arpeggio, hand, plan };
    }),
  item.map((id): Deed => ({ kind: 'drill', drill: `${itemOf(id).arpeggio}.left.chords` })),
  fc
    .option(fc.integer({ min: 7, max: 19 }))
    .map((semitones): Deed => ({ kind: 'span', semitones })),
);

/** A log in the order of its ids. Days mostly go on, and now and then back, as they do for a traveller. */
export const log: fc.Arbitrary<readonly LogEvent[]> = fc
  .array(fc.tuple(deed, fc.constantFrom(0, 0, 0, 0, 1, 1, 3, -1)), { minLength: 1, maxLength: 60 })
  .map((deeds) => {
    const events: LogEvent[] = [];
    let day = 10;
    for (const [next, step] of deeds) {
      day += step;
      const target = next.kind === 'undo' ? events.at(-1 - next.back) : undefined;
      if (target) events.push(event({ kind: 'void', events: [target.id] }, day));
      else if (next.kind !== 'undo') events.push(event(next, day));
    }
    return events;
  });

/** The days that any event of a log can be of, and some around them. */
export const someDay: fc.Arbitrary<string> = fc
  .integer({ min: 0, max: 60 })
  .map((days) => addDays(START, days));
