import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { CHORDS } from '../../shared/music/chords';
import { MapScreen } from '../../src/screens/map/map-screen';
import { StoreContext } from '../../src/store-context';
import { fakeStore } from '../screens/fake-store';

beforeEach(() => vi.stubGlobal('scrollTo', () => undefined));
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

function show(argument: string | null, bodies: Parameters<typeof fakeStore>[0]): void {
  const store = fakeStore(bodies);
  render(
    <StoreContext.Provider value={store}>
      <MapScreen argument={argument} />
    </StoreContext.Provider>,
  );
}
const BEGIN = {
  kind: 'programme',
  programme: { ...DEFAULT_PROGRAMME, notes: ['d', 'eb'], date: '2027-01-15' },
} as const;

test('without a programme it leads to setting one', () => {
  show(null, []);
  expect(screen.getByRole('link', { name: 'Set the programme' })).toBeTruthy();
});

test('every cell is a link to its item, named in full', () => {
  show('right.2', [BEGIN, { kind: 'aside', item: 'd.minor-53.right.2', aside: true }]);
  const table = within(screen.getByRole('table'));
  expect(table.getAllByRole('link')).toHaveLength(2 * 11);
  const link = table.getByRole('link', { name: /^D, minor 5\/3: \d+ per cent, .*set aside$/ });
  expect(link.getAttribute('href')).toBe('#/item/d.minor-53.right.2');
  const heads = table.getAllByRole('columnheader').map((head) => head.textContent);
  CHORDS.forEach(({ name }, i) => expect(heads[i]).toContain(name));
  expect(table.getByRole('rowheader', { name: /^D♯\s*or E♭$/ })).toBeTruthy();
});

test('a stage that is not open has no number and no shade', () => {
  show('together.4', [BEGIN]);
  const [link] = within(screen.getByRole('table')).getAllByRole('link');
  expect(link!.textContent).toBe('D, major 5/3: – not open yet');
  expect(link!.dataset.shade).toBeUndefined();
});

test('what the programme does not ask for is a dot without shade, and the legend says so', () => {
  const { stages } = BEGIN.programme;
  const goal = { ...stages['right.2'], chords: ['major-53'] } as const;
  const alone = { asked: false, target: 240 };
  const only: Programme = {
    ...BEGIN.programme,
    stages: {
      'right.2': goal,
      'left.2': alone,
      'together.2': alone,
      'together.4': alone,
      'together.contrary': alone,
    },
  };
  const aside = { kind: 'aside', item: 'd.minor-53.right.2', aside: true } as const;
  show('right.2', [{ kind: 'programme', programme: only }, aside]);
  const [asked, other, third] = within(screen.getByRole('table')).getAllByRole('link');
  expect(asked!.textContent).toMatch(/^D, major 5\/3: \d+ per cent/);
  expect(asked!.dataset.shade).toBeDefined();
  expect(other!.textContent).toBe('D, minor 5/3: · not asked for');
  expect(third!.textContent).toBe('D, major 6: · not asked for');
  expect([other!.dataset.shade, other!.dataset.aside]).toEqual([undefined, 'false']);
  const ways = within(screen.getByRole('navigation', { name: 'Ways of playing' }));
  expect(ways.getAllByText('not asked for')).toHaveLength(6);
  const legend = screen.getByText('set aside', { exact: false, selector: 'li' }).parentElement!;
  expect(legend.textContent).toContain('· not asked for');
  cleanup();
  show('left.2', [{ kind: 'programme', programme: only }]);
  expect(screen.getByText('The programme does not ask for it.')).toBeTruthy();
  expect(document.body.textContent).not.toContain('at least even');
  cleanup();
  show('right.2', [BEGIN]);
  const all = screen.getByText('set aside', { exact: false, selector: 'li' }).parentElement!;
  expect(all.textContent).not.toContain('not asked for');
});

test('where chords are asked for at different tempos, no one tempo is told for all', () => {
  const { stages } = BEGIN.programme;
  const told = (targets: Programme['stages']['right.2']['targets']) => {
    cleanup();
    const goal = { ...stages['right.2'], ...(targets && { targets }) };
    const programme = { ...BEGIN.programme, stages: { ...stages, 'right.2': goal } };
    show('right.2', [{ kind: 'programme', programme }]);
    return screen.getByText(/^Chance in per cent of at least even at/).textContent;
  };
  expect(told({ 'dominant-7': 200 })).toMatch(/at what is asked of each chord, today\.$/);
  expect(told(undefined)).toMatch(/tempo 60, 4 notes a beat today\.$/);
});

test('the other starting notes and the date of the programme are one touch away', () => {
  show('right.2', [BEGIN]);
  fireEvent.click(screen.getByRole('button', { name: 'Show all twelve starting notes' }));
  expect(screen.getAllByRole('rowheader')).toHaveLength(12);
  fireEvent.click(screen.getByRole('radio', { name: /15\s*Jan/ }));
  expect(screen.getByText(/if nothing is played until then/)).toBeTruthy();
});
