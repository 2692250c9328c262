/** A log with something of everything, and how much of its file is new to a device. */
import type { BackupPreview } from '../../shared/formats/backup';
import { DAY, programme, runs, type World } from './world';

/** Three days with a name, corrections and a remark. */
export async function live(world: World): Promise<void> {
  const store = await world.ready();
  await store.record([programme(), { kind: 'name', name: 'Ada “Königin” 🎹' }]);
  for (let day = 0; day < 3; day++) {
    const [first] = await store.record(runs(6));
    await store.record([{ kind: 'void', events: [first!.id] }]);
    world.at += DAY;
  }
  await store.record([{ kind: 'remark', about: null, text: 'line 1\nline 2\u2028\ud800' }]);
  store.close();
}

export const freshIn = ({ students }: BackupPreview): number =>
  students.reduce((sum, { fresh }) => sum + fresh, 0);
