import { Page } from '../../parts/page/page';

export function TodayScreen() {
  return <Page title="Today">{null}</Page>;
}
