/**
 * A drawing of lines, dots and words, in units of its own from the upper left corner: drawn alike on the screen, in the
 * PDF and on the page of HTML. It is told apart by form and never by colour alone, as it is also printed.
 */

export type Point = readonly [x: number, y: number];

export type Mark =
  | {
      readonly kind: 'path';
      readonly points: readonly Point[];
      readonly look: 'strong' | 'dashed' | 'thin';
    }
  | {
      readonly kind: 'dot';
      readonly at: Point;
      readonly radius: number;
      readonly look: 'full' | 'hollow' | 'thin';
    }
  | {
      readonly kind: 'text';
      /** Its foot, and which end of it is there. */
      readonly at: Point;
      readonly text: string;
      readonly align: 'left' | 'middle' | 'right';
    };

export interface Picture {
  readonly title: string;
  /** What it shows, for those who hear it. */
  readonly alt: string;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** Units of the letters in a picture. */
export const LETTERS = 9;
/** Units of a line by its look. */
export const STROKES = { strong: 1.2, dashed: 1, thin: 0.5 } as const;
/** Units of dash and gap. */
export const DASH = 2.5;
