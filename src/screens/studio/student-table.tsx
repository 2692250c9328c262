/** All students with their figures: a table, and on a phone a card for each. */
import type { ComponentChildren } from 'preact';
import type { Day } from '../../../shared/log/events';
import { Bar } from '../../parts/bar/bar';
import { percent } from '../../parts/percent-text';
import type { ScreenName } from '../../route';
import type { Overview } from '../../store/store';
import { type Column, COLUMNS, type Line, type Order } from './order';
import styles from './studio.module.css';
import { examinationText, practiceText } from './words';

/** What stands over a column, and what is read aloud after it. */
const LABELS: Readonly<Record<Column, readonly [shown: string, spoken: string]>> = {
  name: ['Student', ''],
  now: ['Ready today', 'per cent'],
  onDate: ['On the date', 'ready, per cent'],
  date: ['Examination', ''],
  practice: ['Last practice', ''],
  days: ['Days', 'of practice in four weeks'],
  minutes: ['Minutes', 'played in four weeks'],
  waiting: ['Waiting', ''],
};

export type Open = (line: Line, screen: ScreenName) => void;

interface StudentTableProps {
  readonly lines: readonly Line[];
  readonly order: Order;
  readonly today: Day;
  readonly onOrder: (column: Column) => void;
  readonly onOpen: Open;
}

// A style sheet that lays the rows out as cards would take their roles from them: so these are said.
export function StudentTable({ lines, order, today, onOrder, onOpen }: StudentTableProps) {
  return (
    <table class={styles.table} role="table" aria-label="Students">
      <thead role="rowgroup">
        <tr role="row">
          {COLUMNS.map((column) => (
            <Head key={column} column={column} order={order} onOrder={onOrder} />
          ))}
          <th role="columnheader" scope="col" data-screen-only>
            <span class="spoken">Open</span>
          </th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        {lines.map((line) => (
          <Row key={line.student} line={line} today={today} onOpen={onOpen} />
        ))}
      </tbody>
    </table>
  );
}

interface HeadProps extends Pick<StudentTableProps, 'order' | 'onOrder'> {
  readonly column: Column;
}

function Head({ column, order, onOrder }: HeadProps) {
  const [shown, spoken] = LABELS[column];
  const isSorted = order.column === column;
  const sorted = order.isFalling ? 'descending' : 'ascending';
  return (
    <th
      role="columnheader"
      scope="col"
      class={styles[column]}
      aria-sort={isSorted ? sorted : undefined}
    >
      <button type="button" class={styles.sort} onClick={() => onOrder(column)}>
        {shown}
        {spoken !== '' && <span class="spoken"> {spoken}</span>}
        <span class={styles.arrow} aria-hidden="true">
          {isSorted ? (order.isFalling ? '↓' : '↑') : ''}
        </span>
      </button>
    </th>
  );
}

interface RowProps {
  readonly line: Line;
  readonly today: Day;
  readonly onOpen: Open;
}

function Row({ line, today, onOpen }: RowProps) {
  const { name, overview, waiting } = line;
  return (
    <tr role="row" aria-busy={overview === null}>
      <th role="rowheader" scope="row" class={styles.name}>
        <button
          type="button"
          class={styles.open}
          title={`Report of ${name}`}
          onClick={() => onOpen(line, 'report')}
        >
          {name}
        </button>
      </th>
      {overview === null ? <Unread /> : <Figures overview={overview} today={today} />}
      <Cell column="waiting">{overview === null ? '' : waiting.join('; ')}</Cell>
      <td role="cell" class={styles.ways} data-screen-only>
        <Way name={name} onOpen={() => onOpen(line, 'lesson')}>
          Lesson
        </Way>
        <Way name={name} onOpen={() => onOpen(line, 'today')}>
          List
        </Way>
      </td>
    </tr>
  );
}

const FIGURES = COLUMNS.slice(1, -1);

const Unread = () =>
  FIGURES.map((column) => (
    <Cell key={column} column={column}>
      …
    </Cell>
  ));

function Figures({ overview, today }: { readonly overview: Overview; readonly today: Day }) {
  const { now, onDate, date, lastPractice, days, seconds } = overview.figures;
  return (
    <>
      <Cell column="now">
        {now !== null && (
          <span class={styles.ready}>
            <span class={styles.share}>{percent(now)}</span>
            <Bar share={now} />
          </span>
        )}
      </Cell>
      <Cell column="onDate">{onDate !== null && percent(onDate)}</Cell>
      <Cell column="date">{date !== null && <Examination date={date} today={today} />}</Cell>
      <Cell column="practice">{practiceText(lastPractice, today)}</Cell>
      <Cell column="days">{days}</Cell>
      <Cell column="minutes">{Math.round(seconds / 60)}</Cell>
    </>
  );
}

function Examination({ date, today }: { readonly date: Day; readonly today: Day }) {
  const [day, left] = examinationText(date, today);
  return (
    <>
      <span>{day}</span> <span class="soft">{left}</span>
    </>
  );
}

interface CellProps {
  readonly column: Column;
  readonly children: ComponentChildren;
}

/** The label is shown where there is no head above, on a phone. */
function Cell({ column, children }: CellProps) {
  const isEmpty = children === false || children === '';
  return (
    <td role="cell" class={styles[column]} data-label={LABELS[column][0]} data-empty={isEmpty}>
      {isEmpty ? <span class="soft">–</span> : children}
    </td>
  );
}

interface WayProps {
  readonly name: string;
  readonly onOpen: () => void;
  readonly children: string;
}

function Way({ name, onOpen, children }: WayProps) {
  return (
    <button type="button" class={styles.way} onClick={onOpen}>
      {children}
      <span class="spoken"> of {name}</span>
    </button>
  );
}
