/** The readiness report: one page to hand to a teacher, a parent or a jury. */
import { useMemo } from 'preact/hooks';
import { reportOf } from '../../../shared/planning/report';
import { withHeard } from '../../../shared/planning/weak-joins';
import { dateText } from '../../parts/dates';
import { Page } from '../../parts/page/page';
import { nameText } from '../../parts/words';
import { useStore } from '../../store-context';
import { NoProgramme } from '../../parts/no-programme';
import { AsideList } from './aside-list';
import { programmeText } from '../../parts/programme-text';
import { mapPart } from './document-of';
import { examinationsPart, hindsightPart, pacePart, progressPart } from './forecast-parts';
import { useHeardRuns } from './heard-runs';
import { PartView } from './part-view';
import { ReadinessFigure } from './readiness-figure';
import { ReportTools } from './report-tools';
import { CAUTION } from './report-words';
import { ReportRemarks } from './report-remarks';
import { StageTable } from './stage-table';
import { changePart, passPart } from './standing-parts';
import { WeakestTable } from './weakest-table';
import { WeekTable } from './week-table';
import { joinsPart, plannedPart } from './work-parts';
import styles from './report-screen.module.css';

export function ReportScreen() {
  const store = useStore();
  const student = store.student.value;
  const { programme } = student;
  const today = store.today.value;
  const rated = useMemo(
    () => programme && reportOf(student, programme, today),
    [student, programme, today],
  );
  const runs = useHeardRuns(store, student);
  const report = useMemo(
    () => rated && { ...rated, joins: withHeard(rated.joins, student, { runs, today }) },
    [rated, student, runs, today],
  );
  if (programme === null || report === null) return <NoProgramme title="Readiness report" />;
  const progress = progressPart(report, programme.grouping);
  const hindsight = hindsightPart(student);
  return (
    <Page
      title="Readiness report"
      note={`${nameText(student.name)}, ${dateText(report.today)}`}
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
        <div class={styles.part}>
          <PartView part={mapPart(report, student, programme)} />
        </div>
        <div class={styles.columns}>
          <PartView part={pacePart(student, programme, report)} />
          {hindsight && (
            <div data-screen-only>
              <PartView part={hindsight} />
            </div>
          )}
        </div>
        {progress && (
          <div class={styles.part}>
            <PartView part={progress} />
          </div>
        )}
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
