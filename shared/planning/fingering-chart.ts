/** The fingerings of all arpeggios of a programme, as a chart. */
import type { Programme } from '../log/programme';
import { type Item, roundItems, type StartingNote } from '../music/deck';
import type { Fingering } from '../music/fingering/result';
import type { Hand } from '../music/fingering/types';
import { chosenPlan, fingeringFor } from './chosen-fingering';
import { lastStageOf } from './stages';
import { notesOf, type Student } from './student';

export interface ChartCell {
  /** Over two octaves, which show how it goes on. */
  readonly fingering: Fingering;
  /** The person's choice rather than the best that was computed. */
  readonly isChosen: boolean;
}

export interface ChartRow extends Readonly<Record<Hand, ChartCell>> {
  /** With both hands over two octaves, which stands for all ways of playing the arpeggio. */
  readonly item: Item;
}

export interface NoteChart {
  readonly note: StartingNote;
  /** In the order of a round; only chords that the programme asks for in some stage. */
  readonly rows: readonly ChartRow[];
}

const cellOf = (student: Student, item: Item, hand: Hand): ChartCell => ({
  fingering: fingeringFor(student, item, hand)!,
  isChosen: chosenPlan(student, item, hand) !== null,
});

/** One chart for each starting note of the programme, white keys first. */
export const fingeringChart = (student: Student, programme: Programme): readonly NoteChart[] =>
  notesOf(programme).map((note) => ({
    note,
    rows: roundItems(note, 'together.2')
      .filter(({ chord }) => lastStageOf(programme, chord) >= 0)
      .map((item) => ({
        item,
        right: cellOf(student, item, 'right'),
        left: cellOf(student, item, 'left'),
      })),
  }));

/** Fingers from the lowest note up, a space where the hand changes its position: "123 1235". */
export const fingersText = ({ positions }: Fingering): string =>
  positions.map(({ notes }) => notes.map(({ finger }) => finger).join('')).join(' ');
