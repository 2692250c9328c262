import { Page } from '../../parts/page/page';

export function ReportScreen() {
  return <Page title="Report">{null}</Page>;
}
