/** The notes of an item as a file for other programs. */
import type { Item } from '../../../shared/music/deck';
import type { Score } from '../../../shared/music/score';
import type { Tempo } from '../../../shared/music/tempo';
import { Button } from '../../parts/button/button';
import { download } from '../../parts/download';
import { itemScore } from '../../parts/item-score';
import { say } from '../../parts/notice/notice';
import { useStore } from '../../store-context';
import styles from './save-notes.module.css';

interface SaveNotesProps {
  readonly item: Item;
  readonly tempo: Tempo;
}

/** "d-major-6-right-2". */
const fileName = (item: Item): string => item.id.replaceAll('.', '-');

async function musicXmlOf(score: Score): Promise<Blob> {
  const { musicXml } = await import('../../../shared/formats/musicxml');
  return new Blob([musicXml(score)], { type: 'application/vnd.recordare.musicxml+xml' });
}

async function midiOf(score: Score): Promise<Blob> {
  const { midiFile } = await import('../../../shared/formats/smf');
  return new Blob([midiFile(score)], { type: 'audio/midi' });
}

export function SaveNotes({ item, tempo }: SaveNotesProps) {
  const store = useStore();
  const save = async (make: (score: Score) => Promise<Blob>, ending: string) => {
    try {
      const score = itemScore(store.student.value, item, tempo);
      download(await make(score), `${fileName(item)}.${ending}`);
    } catch {
      say('The file could not be made. Without a network, reload the page once and try again.');
    }
  };
  return (
    <div class={styles.save}>
      <Button onClick={() => void save(musicXmlOf, 'musicxml')}>
        Save for notation (MusicXML)
      </Button>
      <Button onClick={() => void save(midiOf, 'mid')}>Save to be played (MIDI file)</Button>
    </div>
  );
}
