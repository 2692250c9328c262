/** The fingering chart as a table: one row for each hand of each arpeggio. */
import { chordOf } from '../music/chords';
import type { Hand } from '../music/fingering/types';
import { displayName, type NameStyle } from '../music/names';
import { type BlackNames, spell } from '../music/spelling';
import { type ChartRow, fingersText, type NoteChart } from '../planning/fingering-chart';
import { csvOf } from './csv';

export interface NameOptions {
  readonly nameStyle: NameStyle;
  readonly blackNames: BlackNames;
}

const HANDS: readonly (readonly [Hand, string])[] = [
  ['right', 'right hand'],
  ['left', 'left hand'],
];

const HEADER = [
  'bottom note',
  'chord',
  'figures',
  'notes',
  'hand',
  'fingers up over two octaves',
  'chosen by',
];

function rowsOf({ item, ...cells }: ChartRow, { nameStyle, blackNames }: NameOptions) {
  const names = spell(item.note, item.chord, blackNames).map((name) =>
    displayName(name, nameStyle),
  );
  const { name, figures } = chordOf(item.chord);
  return HANDS.map(([hand, handName]) => {
    const { fingering, isChosen } = cells[hand];
    const chosenBy = isChosen ? 'player' : 'computed';
    const fingers = fingersText(fingering);
    return [names[0]!, name, figures.join('/'), names.join(' '), handName, fingers, chosenBy];
  });
}

/** RFC 4180, as `csvOf` writes, for a spreadsheet. */
export function fingeringCsv(charts: readonly NoteChart[], options: NameOptions): string {
  const rows = charts.flatMap((chart) => chart.rows.flatMap((row) => rowsOf(row, options)));
  return csvOf(HEADER, rows, { bom: true });
}
