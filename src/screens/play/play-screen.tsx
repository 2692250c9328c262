import { Page } from '../../parts/page/page';

export function PlayScreen() {
  return <Page title="Play">{null}</Page>;
}
