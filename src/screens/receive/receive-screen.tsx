/** Opens a file: one that the system has handed to the app, or one that is chosen here. */
import { useContext, useEffect, useState } from 'preact/hooks';
import { launchedFile } from '../../launch';
import { say } from '../../parts/notice/notice';
import { OpenFile } from '../../parts/open-file/open-file';
import { Page } from '../../parts/page/page';
import { go } from '../../route';
import { StudentsContext } from '../../store-context';

export function ReceiveScreen() {
  const students = useContext(StudentsContext);
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
        onTakenIn={(said) => {
          const isOneOfMany = (students?.listed.peek().length ?? 0) > 1;
          const onward = { label: 'All students', do: () => go('studio') };
          say(said, isOneOfMany ? onward : undefined);
          go('today');
        }}
      />
    </Page>
  );
}
