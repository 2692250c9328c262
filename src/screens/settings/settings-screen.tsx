import { Page } from '../../parts/page/page';

export function SettingsScreen() {
  return <Page title="Settings">{null}</Page>;
}
