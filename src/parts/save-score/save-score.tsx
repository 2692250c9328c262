/**
 * A score as a file for other programs.
 *
 * <SaveScore what="these notes" scoreOf={() => itemScore(student, item, tempo)} fileName="d-major-6-right-2" />
 */
import { useId } from 'preact/hooks';
import type { Score } from '../../../shared/music/score';
import { Button } from '../button/button';
import { download } from '../download';
import { say } from '../notice/notice';
import styles from './save-score.module.css';

interface SaveScoreProps {
  /** Said after "Save": "the whole round from D". */
  readonly what: string;
  /** Asked only when a file is wanted, as a whole round takes time to make. */
  readonly scoreOf: () => Score;
  /** Without ending. */
  readonly fileName: string;
}

async function musicXmlOf(score: Score): Promise<Blob> {
  const { musicXml } = await import('../../../shared/formats/musicxml');
  return new Blob([musicXml(score)], { type: 'application/vnd.recordare.musicxml+xml' });
}

async function midiOf(score: Score): Promise<Blob> {
  const { midiFile } = await import('../../../shared/formats/smf');
  return new Blob([midiFile(score)], { type: 'audio/midi' });
}

export function SaveScore({ what, scoreOf, fileName }: SaveScoreProps) {
  const id = useId();
  const save = async (make: (score: Score) => Promise<Blob>, ending: string) => {
    try {
      download(await make(scoreOf()), `${fileName}.${ending}`);
    } catch {
      say('The file could not be made. Without a network, reload the page once and try again.');
    }
  };
  return (
    <div class={styles.save} role="group" aria-labelledby={id}>
      <span id={id} class={styles.what}>
        Save {what}
      </span>
      <Button onClick={() => void save(musicXmlOf, 'musicxml')}>as MusicXML</Button>
      <Button onClick={() => void save(midiOf, 'mid')}>as MIDI file</Button>
    </div>
  );
}
