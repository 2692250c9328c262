/** Opens a file: one that the system has handed to the app, or one that is chosen here. */
import { useEffect, useState } from 'preact/hooks';
import { launchedFile } from '../../launch';
import { say } from '../../parts/notice/notice';
import { OpenFile } from '../../parts/open-file/open-file';
import { Page } from '../../parts/page/page';
import { go } from '../../route';

export function ReceiveScreen() {
  const launched = launchedFile.value;
  const [file, setFile] = useState<File | null>(null);
  useEffect(() => {
    if (launched === null) return;
    setFile(launched);
    launchedFile.value = null;
  }, [launched]);
  return (
    <Page
      title="Open a file"
      note="A backup, the record of a student, or a programme. You see what is in it before anything changes."
    >
      <OpenFile
        file={file}
        onTakenIn={() => {
          say('Taken in.');
          go('today');
        }}
      />
    </Page>
  );
}
