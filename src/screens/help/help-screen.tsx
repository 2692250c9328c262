import { Page } from '../../parts/page/page';

export function HelpScreen() {
  return <Page title="Help">{null}</Page>;
}
