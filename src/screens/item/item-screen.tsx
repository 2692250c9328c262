import { Page } from '../../parts/page/page';

export function ItemScreen() {
  return <Page title="Item">{null}</Page>;
}
