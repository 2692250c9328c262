/** The map of a stage: starting notes downwards, chords across, a disc for each item whose area is its chance. */
import type { Mark, Picture, Point } from './picture';

export interface MapRow {
  /** Of the starting note. */
  readonly name: string;
  /** By chord in the order of a round. */
  readonly cells: readonly MapCell[];
}

export interface MapCell {
  readonly state: 'open' | 'not open' | 'aside' | 'not asked';
  /** 0 to 1. */
  readonly chance: number;
}

/** The distance of two discs. */
const PITCH = 10;
const LABELS = 14;
/** Between the groups of chords: root position, first, second inversion, dominant, diminished seventh. */
const GAP = 3;
const GAPS_BEFORE = [0, 0, 1, 1, 2, 2, 3, 3, 3, 3, 4] as const;
/** Radius of a full disc. */
export const MAP_DISC = 4.6;

const xOf = (column: number): number =>
  LABELS + PITCH * (column + 0.5) + GAP * GAPS_BEFORE[column]!;
const yOf = (row: number): number => PITCH * (row + 0.5);

/** The area of the disc is the chance. */
export const discRadius = (chance: number): number => MAP_DISC * Math.sqrt(chance);

export const mapPicture = (title: string, rows: readonly MapRow[]): Picture => ({
  title,
  alt: `Map of ${title}: ${rows.map(rowInWords).join(', ')}`,
  width: xOf(10) + PITCH / 2 + 1,
  height: yOf(rows.length - 1) + PITCH / 2 + 1,
  marks: rows.flatMap(({ name, cells }, row): readonly Mark[] => [
    { kind: 'text', at: [0, yOf(row) + 3], text: name, align: 'left' },
    ...cells.flatMap((cell, column) => marksOf(cell, [xOf(column), yOf(row)])),
  ]),
});

function rowInWords({ name, cells }: MapRow): string {
  const open = cells.filter(({ state }) => state === 'open');
  if (open.length === 0) return `${name} none open`;
  const mean = open.reduce((sum, { chance }) => sum + chance, 0) / open.length;
  return `${name} ${Math.round(100 * mean)} per cent on average`;
}

const stroke = (from: Point, to: Point): Mark => ({
  kind: 'path',
  points: [from, to],
  look: 'strong',
});

function marksOf({ state, chance }: MapCell, [x, y]: Point): readonly Mark[] {
  const arm = 2.6;
  switch (state) {
    case 'aside':
      return [
        stroke([x - arm, y - arm], [x + arm, y + arm]),
        stroke([x - arm, y + arm], [x + arm, y - arm]),
      ];
    case 'not open':
      return [stroke([x - 2, y], [x + 2, y])];
    case 'not asked':
      return [];
    case 'open':
      return [
        { kind: 'dot', at: [x, y], radius: MAP_DISC, look: 'thin' },
        { kind: 'dot', at: [x, y], radius: discRadius(chance), look: 'full' },
      ];
  }
}
