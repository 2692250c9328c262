/** The examination: what a jury would ask, drawn by lot, played without help and marked run by run. */
import { useEffect } from 'preact/hooks';
import { NoProgramme } from '../../parts/no-programme';
import { say } from '../../parts/notice/notice';
import { useStore } from '../../store-context';
import { isBusy } from '../../update/update';
import { Asked } from './asked';
import { bodyOf, type Draft, newDraft, useDraft } from './draft';
import { Result } from './result';
import { SetUp } from './set-up';

export function ExaminationScreen() {
  const store = useStore();
  const { programme } = store.student.value;
  const [draft, setDraft] = useDraft(store);
  const isOpen = draft !== null && draft !== undefined;
  useEffect(() => {
    isBusy.value = isOpen;
    return () => {
      isBusy.value = false;
    };
  }, [isOpen]);

  if (programme === null) return <NoProgramme title="Examination" />;
  if (draft === undefined) return null;
  if (draft === null) {
    return (
      <SetUp programme={programme} onBegin={(begun) => setDraft(newDraft(programme, begun))} />
    );
  }
  const giveUp = () => {
    setDraft(null);
    say('Given up: nothing of it is kept.', { label: 'Undo', do: () => setDraft(draft) });
  };
  if (draft.marks.length < draft.asked.length) {
    return <Asked draft={draft} programme={programme} onChange={setDraft} onGiveUp={giveUp} />;
  }
  const save = async (finished: Draft) => {
    try {
      const [event] = await store.record([bodyOf(finished)]);
      setDraft(null);
      const undo = async () => {
        try {
          await store.record([{ kind: 'void', events: [event!.id] }]);
          setDraft(finished);
        } catch {
          say('This could not be undone now.', { label: 'Try again', do: () => void undo() });
        }
      };
      say('The examination is kept.', { label: 'Undo', do: () => void undo() });
    } catch (error) {
      // The marks stay as they are.
      say(error instanceof Error ? error.message : 'The examination could not be saved.');
    }
  };
  return (
    <Result
      draft={draft}
      programme={programme}
      onChange={setDraft}
      onSave={() => void save(draft)}
      onGiveUp={giveUp}
    />
  );
}
