import { useStore } from '../../store-context';
import { Remarks } from '../../parts/remarks/remarks';
import styles from './report-screen.module.css';

/** So many of the latest remarks are part of the report, so that it stays on one page. */
const SHOWN = 4;

export function ReportRemarks() {
  const { remarks } = useStore().student.value;
  return (
    <section class={remarks.length === 0 ? styles.screenOnly : undefined}>
      <h2>{remarks.length > SHOWN ? 'Latest remarks' : 'Remarks'}</h2>
      <Remarks about={null} remarks={remarks.slice(-SHOWN)} />
    </section>
  );
}
