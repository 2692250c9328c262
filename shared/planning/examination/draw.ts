/** What a jury would ask: items of the programme, drawn by lot so that the same seed draws the same again. */
import type { ExaminationSettings } from '../../log/examination';
import { askedStages, asksFor, type Programme, targetFor } from '../../log/programme';
import { CHORD_IDS } from '../../music/chords';
import { type Item, roundItems } from '../../music/deck';
import { playableTempo, type Tempo } from '../../music/tempo';
import { notesOf } from '../student';
import { chanceOf } from './chance';

/** How many are asked, and how many of them must be even: own choice, as boards mark by impression. */
const COUNT = 6;
const TO_PASS = 5;

/** All of a programme, at the tempo that it asks for. */
export const defaultSettings = (programme: Programme): ExaminationSettings =>
  fittedTo(programme, {
    notes: notesOf(programme),
    chords: CHORD_IDS,
    stages: askedStages(programme),
    count: COUNT,
    toPass: TO_PASS,
    tempoPercent: 100,
    beat: false,
  });

/** No more drawn than there are, and no more needed than are drawn. */
export function fittedTo(programme: Programme, settings: ExaminationSettings): ExaminationSettings {
  const count = Math.max(1, Math.min(settings.count, poolOf(programme, settings).length));
  return { ...settings, count, toPass: Math.min(settings.toPass, count) };
}

/** Settings of an earlier examination as far as the programme of today still asks for it; null if nothing is left. */
export function settingsFor(
  programme: Programme,
  earlier: ExaminationSettings,
): ExaminationSettings | null {
  const notes = notesOf(programme).filter((note) => earlier.notes.includes(note));
  const stages = askedStages(programme).filter((stage) => earlier.stages.includes(stage));
  const settings = { ...earlier, notes, stages };
  return poolOf(programme, settings).length < earlier.count ? null : settings;
}

/** All that may be asked, in the order of the deck: no chord in a stage for which the programme does not ask for it. */
export const poolOf = (
  programme: Programme,
  { notes, chords, stages }: Pick<ExaminationSettings, 'notes' | 'chords' | 'stages'>,
): readonly Item[] =>
  stages
    .flatMap((stage) =>
      notes.flatMap((note) =>
        roundItems(note, stage).filter(
          ({ chord }) => chords.includes(chord) && asksFor(programme, stage, chord),
        ),
      ),
    )
    .toSorted((a, b) => a.index - b.index);

/** At what tempo an item is asked: a whole metronome mark, in notes per minute. */
export const askedTempo = (programme: Programme, item: Item, tempoPercent: number): Tempo =>
  playableTempo((targetFor(programme, item) * tempoPercent) / 100, programme.grouping);

/** So many of the pool, none twice and each as likely as any other, in the order in which they are asked. */
export function drawFrom<T>(pool: readonly T[], count: number, share: () => number): readonly T[] {
  const left = [...pool];
  return Array.from({ length: Math.min(count, pool.length) }, () => {
    const place = Math.floor(share() * left.length);
    const drawn = left[place]!;
    left[place] = left.at(-1)!;
    left.pop();
    return drawn;
  });
}

export const drawItems = (
  programme: Programme,
  settings: ExaminationSettings,
  seed: number,
): readonly Item[] => drawFrom(poolOf(programme, settings), settings.count, chanceOf(seed).share);
