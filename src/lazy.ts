/**
 * The one door to everything that is not in the first load. The entry imports only types from behind it; a module
 * that is loaded here must not be imported by value from the shell, today's screen or the store.
 */
import type { ComponentType } from 'preact';
import type { ScreenName, ScreenProps } from './route';

type LazyScreen = () => Promise<ComponentType<ScreenProps>>;

/** Today's list is the only screen of the first load. */
export const lazyScreens: Readonly<Record<Exclude<ScreenName, 'today'>, LazyScreen>> = {
  play: async () => (await import('./screens/play/play-screen')).PlayScreen,
  map: async () => (await import('./screens/map/map-screen')).MapScreen,
  item: async () => (await import('./screens/item/item-screen')).ItemScreen,
  fingering: async () => (await import('./screens/fingering/fingering-screen')).FingeringScreen,
  drill: async () => (await import('./screens/drill/drill-screen')).DrillScreen,
  recording: async () => (await import('./screens/recording/recording-screen')).RecordingScreen,
  report: async () => (await import('./screens/report/report-screen')).ReportScreen,
  examination: async () =>
    (await import('./screens/examination/examination-screen')).ExaminationScreen,
  lesson: async () => (await import('./screens/lesson/lesson-screen')).LessonScreen,
  placement: async () => (await import('./screens/placement/placement-screen')).PlacementScreen,
  programme: async () => (await import('./screens/programme/programme-screen')).ProgrammeScreen,
  receive: async () => (await import('./screens/receive/receive-screen')).ReceiveScreen,
  studio: async () => (await import('./screens/studio/studio-screen')).StudioScreen,
  settings: async () => (await import('./screens/settings/settings-screen')).SettingsScreen,
  help: async () => (await import('./screens/help/help-screen')).HelpScreen,
  start: async () => (await import('./screens/start/start-screen')).StartScreen,
};

export const openDemo = async () => (await import('./demo/open-demo')).openDemo();
