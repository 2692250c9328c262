/** Ways to hand the report on, and the ways to what else is the teacher's. */
import { useEffect, useState } from 'preact/hooks';
import type { Programme } from '../../../shared/log/programme';
import { handedOut, type Report } from '../../../shared/planning/report';
import type { Student } from '../../../shared/planning/student';
import { now } from '../../clock';
import { Button, ButtonLink } from '../../parts/button/button';
import { download } from '../../parts/download';
import { NameField } from '../../parts/name-field/name-field';
import { say } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import type { Store } from '../../store/store';
import { documentOf } from './document-of';
import styles from './report-screen.module.css';

interface ToolsProps {
  readonly student: Student;
  readonly programme: Programme;
  readonly report: Report;
}

const CHANGED =
  'Saved. Some letters of names or remarks are not in the font of the PDF: they are written plainly or as “?” there. Print the report or save it as a page (HTML) to have them all.';

const loadPdf = () => import('../../parts/report-pdf/save-pdf');
/** Milliseconds after which the report has been drawn and what writes PDF is read in, as that takes a moment. */
const DRAWN = 1000;

export function ReportTools({ student, programme, report }: ToolsProps) {
  const store = useStore();
  const [isNaming, setNaming] = useState(false);
  const [isMaking, setMaking] = useState(false);
  useEffect(() => {
    // Without a network it may not be there; the button then says so.
    const timer = setTimeout(() => void loadPdf().catch(() => undefined), DRAWN);
    return () => clearTimeout(timer);
  }, []);
  const nameOf = (ending: string) => `arpeggiary-report-${report.today}.${ending}`;

  const save = async (make: () => Promise<string>) => {
    setMaking(true);
    try {
      const said = await make();
      await noteHandedOut(store, report, said);
    } catch {
      say('The file could not be made. Without a network, reload the page once and try again.');
    }
    setMaking(false);
  };
  const savePdf = async () => {
    const { pdfOf } = await loadPdf();
    const written = documentOf(report, student, programme);
    const { bytes, isChanged } = await pdfOf(written, navigator.language, new Date(now()));
    download(new Blob([bytes], { type: 'application/pdf' }), nameOf('pdf'));
    return isChanged ? CHANGED : 'Saved.';
  };
  const saveHtml = async () => {
    const { reportHtml } = await import('../../../shared/formats/report-html');
    const page = reportHtml(documentOf(report, student, programme));
    download(new Blob([page], { type: 'text/html' }), nameOf('html'));
    return 'Saved.';
  };
  const saveTable = async () => {
    const { reportCsv } = await import('../../../shared/formats/report-csv');
    const { nameStyle } = preferences.value;
    const table = reportCsv({ student, programme, today: report.today, nameStyle });
    download(new Blob([table], { type: 'text/csv' }), nameOf('csv'));
    return 'Saved.';
  };
  return (
    <div class={styles.tools} data-screen-only>
      <div class={styles.buttons}>
        <Button kind="main" disabled={isMaking} onClick={() => void save(savePdf)}>
          {isMaking ? 'Making it…' : 'Save as PDF'}
        </Button>
        <Button onClick={() => void save(onPaper)}>Print</Button>
        <Button onClick={() => void save(saveHtml)}>Save as a page (HTML)</Button>
        <Button onClick={() => void save(saveTable)}>Save as a table (CSV)</Button>
        {!isNaming && (
          <Button kind="quiet" onClick={() => setNaming(true)}>
            {student.name === null ? 'Add the name' : 'Change the name'}
          </Button>
        )}
      </div>
      {isNaming && <NameField onSaved={() => setNaming(false)} />}
      <div class={styles.buttons}>
        <ButtonLink href={hrefOf('lesson')}>Lesson</ButtonLink>
        <ButtonLink href={hrefOf('examination')}>Examination</ButtonLink>
      </div>
    </div>
  );
}

async function onPaper(): Promise<string> {
  print();
  return 'Printed.';
}

/** So that the next report can tell what has changed. One a day is enough. */
async function noteHandedOut(store: Store, report: Report, said: string): Promise<void> {
  if (store.student.value.reports.at(-1)?.day === report.today) {
    say(said);
    return;
  }
  const [event] = await store.record([handedOut(report)]);
  const undo = () => {
    store
      .record([{ kind: 'void', events: [event!.id] }])
      .then(() => say('Undone: this report does not count.'))
      .catch(() => say('This could not be undone now.', { label: 'Try again', do: undo }));
  };
  say(`${said} The next report will tell what has changed since.`, { label: 'Undo', do: undo });
}
