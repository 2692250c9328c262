/** Records that this version cannot read. They are kept, and are in every backup. */
import { useStore } from '../../store-context';
import { Section } from './section';

export function UnreadSection() {
  const unread = useStore().unread.value;
  if (unread.length === 0) return null;
  const newer = unread.filter((event) => event.outcome === 'newer').length;
  const damaged = unread.filter((event) => event.outcome === 'damaged');
  return (
    <Section title="Records that are not read">
      {newer > 0 && (
        <p>
          {newer === 1 ? 'One record was' : `${newer} records were`} written by a newer version of
          the app. Update the app here, and {newer === 1 ? 'it counts' : 'they count'} again.
        </p>
      )}
      {damaged.length > 0 && (
        <>
          <p>
            {damaged.length === 1 ? 'One record is' : `${damaged.length} records are`} damaged and
            left out of the reckoning; all others count. A backup saved earlier, or another device,
            may have {damaged.length === 1 ? 'it' : 'them'} whole: taking in a file of it mends{' '}
            {damaged.length === 1 ? 'it' : 'them'}.
          </p>
          <ul class="small soft">
            {damaged.map(({ id, problem }) => (
              <li key={id}>
                {id}: {problem}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>Until then they stay in the record and in every backup.</p>
    </Section>
  );
}
