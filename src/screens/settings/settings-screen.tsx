/** The programme, how things look and sound, and the record on this device. */
import { Page } from '../../parts/page/page';
import { demoStore } from '../../store-context';
import { AboutSection } from './about-section';
import { BeatSection } from './beat-section';
import { DataSection } from './data-section';
import { EraseSection } from './erase-section';
import { HandSection } from './hand-section';
import { InstallSection } from './install-section';
import { ListeningSection } from './listening-section';
import { NamesSection } from './names-section';
import { PedalSection } from './pedal-section';
import { ProgrammeSection } from './programme-section';
import { Section } from './section';
import { StudentsSection } from './students-section';
import { ThemeSection } from './theme-section';
import { UnreadSection } from './unread-section';

export function SettingsScreen() {
  const isDemo = demoStore.value !== null;
  return (
    <Page title="Settings">
      <ProgrammeSection />
      <StudentsSection />
      <HandSection />
      <NamesSection />
      <ThemeSection />
      <BeatSection />
      <PedalSection />
      <ListeningSection />
      {isDemo ? (
        <Section title="Record">
          <p>This is an invented student. Leave the demonstration to see your own record.</p>
        </Section>
      ) : (
        <>
          <DataSection />
          <UnreadSection />
          <InstallSection />
          <EraseSection />
        </>
      )}
      <AboutSection />
    </Page>
  );
}
