/** Tempo is kept as notes per minute and shown as a metronome mark with three or four notes to the beat. */

/** Notes per minute. */
export type Tempo = number;

export type Grouping = 3 | 4;

/** What a person can ask the beat for, in notes per minute: from one note in a second and a half to beyond 120 x 4. */
export const SLOWEST: Tempo = 40;
export const FASTEST: Tempo = 600;

/** Beats per minute: `markOf(240, 4)` is 60. */
export const markOf = (tempo: Tempo, grouping: Grouping): number => Math.round(tempo / grouping);

/** Notes per minute of a metronome mark: `tempoOf(60, 4)` is 240. */
export const tempoOf = (mark: number, grouping: Grouping): Tempo => mark * grouping;

/** The playable tempo nearest to a wish that has a whole metronome mark. */
export function playableTempo(wish: Tempo, grouping: Grouping): Tempo {
  const lowest = Math.ceil(SLOWEST / grouping);
  const highest = Math.floor(FASTEST / grouping);
  return tempoOf(Math.min(highest, Math.max(lowest, markOf(wish, grouping))), grouping);
}

/** Seconds that a number of inter-onset intervals takes: `secondsOf(24, 240)` is 6. */
export const secondsOf = (intervals: number, tempo: Tempo): number => (intervals * 60) / tempo;
