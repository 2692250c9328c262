/** The readiness report as a table: one row for each item of the programme. */
import { deckOf, readinessOf } from '../learning/readiness';
import { reachOf } from '../learning/prediction';
import { type Day, FLUENCIES } from '../log/events';
import { type Programme, targetFor } from '../log/programme';
import { chordOf } from '../music/chords';
import { type Hands, handsOf, type Item, type Motion, motionOf } from '../music/deck';
import { type NameStyle, startingNoteName } from '../music/names';
import { markOf } from '../music/tempo';
import type { Student } from '../planning/student';
import { type Cell, csvOf } from './csv';

export interface ReportInput {
  readonly student: Student;
  readonly programme: Programme;
  readonly today: Day;
  readonly nameStyle: NameStyle;
}

const HANDS: Readonly<Record<Hands, string>> = {
  right: 'right hand',
  left: 'left hand',
  together: 'hands together',
};
const MOTIONS: Readonly<Record<Motion, string>> = {
  '2': 'two octaves',
  '4': 'four octaves',
  contrary: 'contrary motion',
};

function headerOf(programme: Programme, date: Day): readonly string[] {
  const beat = `${programme.grouping} notes a beat`;
  return [
    'starting note',
    'chord',
    'figures',
    'hands',
    'motion',
    `target mark (${beat})`,
    `reach mark now (${beat})`,
    `chance of even on ${date} (per cent)`,
    'last run',
    'last fluency',
    'set aside',
  ];
}

function rowOf(item: Item, chance: number, input: ReportInput): readonly Cell[] {
  const { student, programme, today, nameStyle } = input;
  const chord = chordOf(item.chord);
  const last = student.lastRuns.get(item.id);
  return [
    startingNoteName(item.note, nameStyle),
    chord.name,
    // Not "6/4", which a spreadsheet would turn into a date.
    chord.figures.join(' '),
    HANDS[handsOf(item.way)],
    MOTIONS[motionOf(item.way)],
    markOf(targetFor(programme, item), programme.grouping),
    markOf(reachOf(student.learner, item, today).tempo, programme.grouping),
    Math.round(chance * 100),
    last?.day ?? null,
    last ? FLUENCIES[last.fluency] : null,
    student.aside.has(item.id) ? 'yes' : 'no',
  ];
}

/**
 * CSV with a byte order mark. The chance is that of the programme's date, or of today where there is none or it is
 * over.
 */
export function reportCsv(input: ReportInput): string {
  const { student, programme, today } = input;
  const date = programme.date !== null && programme.date > today ? programme.date : today;
  const { chances } = readinessOf(student.learner, programme, date);
  const rows = deckOf(programme).map((item) => rowOf(item, chances.get(item.id)!, input));
  return csvOf(headerOf(programme, date), rows, { bom: true });
}
