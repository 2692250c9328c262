/** The readiness report: one page to hand to a teacher, a parent or a jury. */
import { useState } from 'preact/hooks';
import type { Programme } from '../../../shared/log/programme';
import { type Report, reportOf } from '../../../shared/planning/report';
import type { Student } from '../../../shared/planning/student';
import { Button, ButtonLink } from '../../parts/button/button';
import { dateText } from '../../parts/dates';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { preferences } from '../../preferences';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { NoProgramme } from '../../parts/no-programme';
import { download } from '../../parts/download';
import { NameField } from '../../parts/name-field/name-field';
import { AsideList } from './aside-list';
import { programmeText } from '../../parts/programme-text';
import { ReadinessFigure } from './readiness-figure';
import { ReportRemarks } from './report-remarks';
import { SmallMaps } from './small-maps';
import { StageTable } from './stage-table';
import { WeakestTable } from './weakest-table';
import { WeekTable } from './week-table';
import styles from './report-screen.module.css';

export function ReportScreen() {
  const store = useStore();
  const student = store.student.value;
  const { programme } = student;
  if (programme === null) return <NoProgramme title="Readiness report" />;
  const report = reportOf(student, programme, store.today.value);
  return (
    <Page
      title="Readiness report"
      note={`${student.name ?? 'A student without a name here'}, ${dateText(report.today)}`}
      isWide
    >
      <Tools student={student} programme={programme} report={report} />
      <div class={styles.report}>
        <p class={styles.programme}>{programmeText(programme, report.onDate.items)}</p>
        <div class={styles.summary}>
          <ReadinessFigure report={report} />
          <StageTable report={report} grouping={programme.grouping} />
        </div>
        <SmallMaps student={student} programme={programme} date={report.date} />
        <div class={styles.columns}>
          <WeakestTable report={report} grouping={programme.grouping} />
          <WeekTable weeks={report.weeks} />
        </div>
        <div class={styles.columns}>
          <ReportRemarks />
          <AsideList items={report.aside} />
        </div>
        <p class={styles.caution}>
          All figures are estimates from runs that the player or the teacher has judged: a help for
          a decision, not a mark. Pain means stop; pain that lasts or returns is for a doctor or a
          performing-arts clinic.
        </p>
      </div>
    </Page>
  );
}

interface ToolsProps {
  readonly student: Student;
  readonly programme: Programme;
  readonly report: Report;
}

function Tools({ student, programme, report }: ToolsProps) {
  const [isNaming, setNaming] = useState(false);
  const saveTable = async () => {
    try {
      const { reportCsv } = await import('../../../shared/formats/report-csv');
      const { nameStyle } = preferences.value;
      const table = reportCsv({ student, programme, today: report.today, nameStyle });
      download(new Blob([table], { type: 'text/csv' }), `arpeggiary-report-${report.today}.csv`);
    } catch {
      say('The table could not be made. Without a network, reload the page once and try again.');
    }
  };
  return (
    <div class={styles.tools} data-screen-only>
      <div class={styles.buttons}>
        <Button kind="main" onClick={() => print()}>
          Print
        </Button>
        <Button onClick={() => void saveTable()}>Save as a table (CSV)</Button>
        <ButtonLink href={hrefOf('lesson')}>Lesson</ButtonLink>
        <ButtonLink href={hrefOf('examination')}>Examination</ButtonLink>
        {!isNaming && (
          <Button kind="quiet" onClick={() => setNaming(true)}>
            {student.name === null ? 'Add the name' : 'Change the name'}
          </Button>
        )}
      </div>
      {isNaming && <NameField onSaved={() => setNaming(false)} />}
    </div>
  );
}
