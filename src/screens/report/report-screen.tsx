/** The readiness report: one page to hand to a teacher, a parent or a jury. */
import { useMemo } from 'preact/hooks';
import { reportOf } from '../../../shared/planning/report';
import { dateText } from '../../parts/dates';
import { Page } from '../../parts/page/page';
import { useStore } from '../../store-context';
import { NoProgramme } from '../../parts/no-programme';
import { AsideList } from './aside-list';
import { programmeText } from '../../parts/programme-text';
import { changePart, examinationsPart, joinsPart, passPart, plannedPart } from './document-of';
import { ForecastSection } from './forecast-section';
import { PartView } from './part-view';
import { ReadinessFigure } from './readiness-figure';
import { ReportTools } from './report-tools';
import { CAUTION } from './report-words';
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
  const today = store.today.value;
  const report = useMemo(
    () => programme && reportOf(student, programme, today),
    [student, programme, today],
  );
  if (programme === null || report === null) return <NoProgramme title="Readiness report" />;
  return (
    <Page
      title="Readiness report"
      note={`${student.name ?? 'A student without a name here'}, ${dateText(report.today)}`}
      isWide
    >
      <ReportTools student={student} programme={programme} report={report} />
      <div class={styles.report}>
        <p class={styles.programme}>{programmeText(programme, report.onDate.items)}</p>
        <div class={styles.summary}>
          <div class={styles.parts}>
            <ReadinessFigure report={report} />
            <PartView part={passPart(report)} />
          </div>
          <div class={styles.parts}>
            <StageTable report={report} grouping={programme.grouping} />
            {report.change && <PartView part={changePart(report)} />}
          </div>
        </div>
        <ForecastSection student={student} programme={programme} today={today} />
        <SmallMaps student={student} programme={programme} date={report.date} />
        <div class={styles.columns}>
          <div class={styles.parts}>
            <WeakestTable report={report} grouping={programme.grouping} />
            <PartView part={joinsPart(student, report)} />
            {report.examinations.length > 0 && <PartView part={examinationsPart(report)} />}
          </div>
          <div class={styles.parts}>
            <WeekTable weeks={report.weeks} />
            <PartView part={plannedPart(report, programme.grouping)} />
          </div>
        </div>
        <div class={styles.columns}>
          <ReportRemarks />
          <AsideList items={report.aside} />
        </div>
        <p class={styles.caution}>{CAUTION}</p>
      </div>
    </Page>
  );
}
