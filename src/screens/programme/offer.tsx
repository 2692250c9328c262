import { useContext, useState } from 'preact/hooks';
import type { ProgrammeOffer } from '../../../shared/formats/programme-offer';
import type { EventBody } from '../../../shared/log/events';
import { Button, ButtonLink } from '../../parts/button/button';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { type Change, changesOf } from '../../parts/programme-offer/changes';
import { nameText } from '../../parts/words';
import { go, hrefOf } from '../../route';
import { StudentsContext, useStore } from '../../store-context';
import styles from './programme-screen.module.css';

export function Offer({ offer }: { readonly offer: ProgrammeOffer }) {
  const store = useStore();
  const students = useContext(StudentsContext);
  const [failure, setFailure] = useState<string | null>(null);
  const { programme: before, name: known } = store.student.value;
  const { programme, name } = offer;
  const changes = changesOf(before, programme);
  const hasSeveral = (students?.listed.value.length ?? 0) > 1;

  const accept = async () => {
    const bodies: EventBody[] = [{ kind: 'programme', programme }];
    if (known === null && name !== null) bodies.push({ kind: 'name', name });
    try {
      await store.record(bodies);
      say('The programme holds from now on.');
      go('today');
    } catch (error) {
      setFailure(error instanceof Error ? error.message : 'It could not be saved.');
    }
  };

  return (
    <Page
      title="A programme for you"
      lit={programme.notes}
      note={name === null ? undefined : `It was made for ${nameText(name)}.`}
    >
      <div class={styles.offer}>
        {hasSeveral && (
          <p>
            Accepted, it is the programme of {known ?? 'the student who is shown'}. For somebody
            else, choose the name at the head of the page first.
          </p>
        )}
        {changes.length === 0 ? (
          <p>It is the programme that holds already.</p>
        ) : (
          <ChangeTable changes={changes} isFirst={before === null} />
        )}
        {before !== null && before.reached !== programme.reached && (
          <p>
            With another stage reached, every arpeggio starts again from there; its runs and its
            reach stay.
          </p>
        )}
        <p class="soft">What has been played stays on the record.</p>
        {failure !== null && <p role="alert">{failure}</p>}
        <div class={styles.answers}>
          {changes.length > 0 && (
            <Button kind="main" onClick={() => void accept()}>
              Accept this programme
            </Button>
          )}
          <ButtonLink href={hrefOf('today')}>
            {changes.length > 0 ? 'Leave it as it is' : 'To today’s list'}
          </ButtonLink>
        </div>
      </div>
    </Page>
  );
}

interface ChangeTableProps {
  readonly changes: readonly Change[];
  readonly isFirst: boolean;
}

function ChangeTable({ changes, isFirst }: ChangeTableProps) {
  return (
    <table class={styles.changes}>
      <caption>{isFirst ? 'The programme' : 'What changes'}</caption>
      <thead class={isFirst ? 'spoken' : undefined}>
        <tr>
          <th scope="col">What</th>
          {!isFirst && <th scope="col">Until now</th>}
          <th scope="col">{isFirst ? 'Asked' : 'From now on'}</th>
        </tr>
      </thead>
      <tbody>
        {changes.map(({ what, before, after }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            {!isFirst && <td>{before}</td>}
            <td>{after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
