/** The fingering chart of the whole programme: on screen, on paper and as a table. */
import { useMemo } from 'preact/hooks';
import type { Programme } from '../../../shared/log/programme';
import { chordOf } from '../../../shared/music/chords';
import {
  type ChartCell,
  type ChartRow,
  fingeringChart,
  fingersText,
  type NoteChart,
} from '../../../shared/planning/fingering-chart';
import type { Student } from '../../../shared/planning/student';
import { Button } from '../../parts/button/button';
import { download } from '../../parts/download';
import { NoProgramme } from '../../parts/no-programme';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import wide from '../../parts/wide.module.css';
import { chordText, noteText } from '../../parts/words';
import { preferences } from '../../preferences';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import styles from './fingering-screen.module.css';

export function FingeringScreen() {
  const student = useStore().student.value;
  const { programme } = student;
  if (programme === null) return <NoProgramme title="Fingering chart" />;
  return <Chart student={student} programme={programme} />;
}

interface ChartProps {
  readonly student: Student;
  readonly programme: Programme;
}

function Chart({ student, programme }: ChartProps) {
  const charts = useMemo(() => fingeringChart(student, programme), [student, programme]);
  return (
    <Page
      title="Fingering chart"
      note="From the lowest note up, over two octaves; a space is where the hand changes its position."
      isWide
    >
      <div class={styles.tools} data-screen-only>
        <Button onClick={() => print()}>Print</Button>
        <Button onClick={() => void saveTable(charts)}>Save as a table (CSV)</Button>
      </div>
      <div class={styles.charts}>
        {charts.map((chart) => (
          <NoteTable key={chart.note} chart={chart} />
        ))}
      </div>
      <p class={styles.note}>
        Computed for {student.span === null ? 'an average hand' : 'this student’s hand'}; * is the
        player’s own choice. Any fingering that is regular and comes out well is a good one.
      </p>
    </Page>
  );
}

async function saveTable(charts: readonly NoteChart[]): Promise<void> {
  try {
    const { fingeringCsv } = await import('../../../shared/formats/fingering-csv');
    const { nameStyle, blackNames } = preferences.value;
    const table = fingeringCsv(charts, { nameStyle, blackNames });
    download(new Blob([table], { type: 'text/csv' }), 'arpeggiary-fingering.csv');
  } catch {
    say('The table could not be made. Without a network, reload the page once and try again.');
  }
}

function NoteTable({ chart }: { readonly chart: NoteChart }) {
  return (
    <div class={wide.scroll}>
      <table class={styles.table}>
        <caption>{noteText(chart.note)}</caption>
        <thead>
          <tr>
            <th scope="col">chord</th>
            <th scope="col">notes</th>
            <th scope="col">right hand</th>
            <th scope="col">left hand</th>
          </tr>
        </thead>
        <tbody>
          {chart.rows.map((row) => (
            <Row key={row.item.id} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Row({ row }: { readonly row: ChartRow }) {
  const { item } = row;
  const text = chordText(item.note, item.chord);
  return (
    <tr>
      <th scope="row">
        <a href={hrefOf('item', item.id)}>{chordOf(item.chord).shortName}</a>
      </th>
      <td class={styles.notes}>
        <span class="spoken">{text.spoken}</span>
        <span aria-hidden="true">{text.notes}</span>
      </td>
      <Fingers cell={row.right} />
      <Fingers cell={row.left} />
    </tr>
  );
}

function Fingers({ cell }: { readonly cell: ChartCell }) {
  return (
    <td class={styles.fingers}>
      {fingersText(cell.fingering)}
      {cell.isChosen && (
        <>
          <span aria-hidden="true">*</span>
          <span class="spoken"> own choice</span>
        </>
      )}
    </td>
  );
}
