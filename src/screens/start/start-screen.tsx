import { Page } from '../../parts/page/page';

export function StartScreen() {
  return <Page title="Start">{null}</Page>;
}
