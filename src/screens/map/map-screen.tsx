import { Page } from '../../parts/page/page';

export function MapScreen() {
  return <Page title="Map">{null}</Page>;
}
