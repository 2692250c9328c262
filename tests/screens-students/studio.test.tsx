import { signal } from '@preact/signals';
import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { StudioFigures } from '../../shared/planning/studio';
import { route } from '../../src/route';
import { StudioScreen } from '../../src/screens/studio/studio-screen';
import { StoreContext, StudentsContext } from '../../src/store-context';
import type { Listed, Overview, Store, Students } from '../../src/store/store';
import { fakeStore } from '../screens/fake-store';

const FIGURES: StudioFigures = {
  now: 0.5,
  onDate: null,
  date: null,
  lastPractice: '2026-11-24',
  days: 3,
  seconds: 600,
  remarks: 0,
};

const listed = (name: string, isArchived = false): Listed => ({
  id: `id of ${name}`,
  name,
  namedUpTo: '',
  isArchived,
});

type Told = Readonly<Record<string, Partial<StudioFigures & Omit<Overview, 'figures'>>>>;

const overviewOf = (student: string, told: Told[string]): Overview => {
  const { cameAt = null, givenOn = null, ...figures } = told;
  return { student, figures: { ...FIGURES, ...figures }, cameAt, givenOn };
};

interface ShownProps {
  readonly store: Store;
  readonly students: Students;
}

const Shown = ({ store, students }: ShownProps) => (
  <StoreContext.Provider value={store}>
    <StudentsContext.Provider value={students}>
      <StudioScreen />
    </StudentsContext.Provider>
  </StoreContext.Provider>
);

/** Shows the overview of these, each of whom is told of at once; of the others nothing is told. */
function show(all: readonly Listed[], told: Told) {
  const asked: Students['overlook'] = async ({ students, tell }) => {
    for (const id of students) {
      const one = told[id.replace('id of ', '')];
      if (one !== undefined) tell(overviewOf(id, one));
    }
  };
  const students: Partial<Students> = {
    listed: signal(all),
    shown: signal(all[0]!.id),
    show: vi.fn<Students['show']>(() => Promise.resolve()),
    archive: vi.fn<Students['archive']>(() => Promise.resolve()),
    overlook: vi.fn<Students['overlook']>(asked),
  };
  render(<Shown store={fakeStore([])} students={students as Students} />);
  return students;
}

const rows = () => within(screen.getByRole('table')).getAllByRole('row').slice(1);
const namesShown = () => rows().map((row) => row.querySelector('th')!.textContent);
const textsOf = (name: string) =>
  [
    ...rows()
      .find((row) => row.textContent.startsWith(name))!
      .querySelectorAll('td'),
  ].map((cell) => cell.textContent);
const head = (name: RegExp) => screen.getByRole('button', { name });

beforeEach(() => {
  location.hash = '#/studio';
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

test('with one student there is nothing to compare', () => {
  show([listed('Ada')], {});
  expect(screen.queryByRole('table')).toBeNull();
});

test('says of each what its figures are, and of the others that they are being read', () => {
  const all = ['Ada', 'Ben', 'Cleo'].map((name) => listed(name));
  show(all, {
    Ada: { now: 0.714, onDate: 0.626, date: '2026-12-12', days: 12, seconds: 14_390 },
    Ben: { now: null, lastPractice: null, days: 0, seconds: 0 },
  });
  expect(textsOf('Ada').slice(0, -1)).toEqual([
    '71',
    '63',
    '12\u00A0Dec in 17 days',
    'yesterday',
    '12',
    '240',
    '–',
  ]);
  expect(textsOf('Ben').slice(0, -1)).toEqual(['–', '–', '–', 'not yet', '0', '0', 'no programme']);
  expect(textsOf('Cleo')[0]).toBe('…');
  expect(screen.getAllByRole('status').map(({ textContent }) => textContent)).toContain(
    'Reading: 2 of 3',
  );
  expect((head(/Save as a table/) as HTMLButtonElement).disabled).toBe(true);
});

const at = (day: string) => new Date(`${day}T12:00`).getTime();

describe('the order', () => {
  const all = ['Emil', 'Fay', 'Gil', 'Hana'].map((name) => listed(name));
  const told: Told = {
    Emil: {
      now: 0.3,
      date: '2027-01-01',
      onDate: 0.2,
      days: 9,
      seconds: 60,
      remarks: 1,
      cameAt: 0,
    },
    Fay: { now: 0.9, date: '2026-12-01', onDate: 0.8, lastPractice: '2026-11-01' },
    Gil: { now: null, lastPractice: null, days: 1, seconds: 900 },
    Hana: { now: 0.3, date: '2027-02-01', onDate: 0.1, lastPractice: '2026-11-20', days: 4 },
  };

  // What there is not comes last either way; what is the same, by name.
  test.each([
    [/^Ready today/, ['Emil', 'Hana', 'Fay', 'Gil'], ['Fay', 'Emil', 'Hana', 'Gil']],
    [/^On the date/, ['Hana', 'Emil', 'Fay', 'Gil'], ['Fay', 'Emil', 'Hana', 'Gil']],
    [/^Examination/, ['Fay', 'Emil', 'Hana', 'Gil'], ['Hana', 'Emil', 'Fay', 'Gil']],
    [/^Last practice/, ['Fay', 'Hana', 'Emil', 'Gil'], ['Emil', 'Hana', 'Fay', 'Gil']],
    [/^Days/, ['Gil', 'Fay', 'Hana', 'Emil'], ['Emil', 'Hana', 'Fay', 'Gil']],
    [/^Minutes/, ['Emil', 'Fay', 'Hana', 'Gil'], ['Gil', 'Fay', 'Hana', 'Emil']],
    [/^Waiting/, ['Emil', 'Gil', 'Fay', 'Hana'], ['Gil', 'Emil', 'Fay', 'Hana']],
    [/^Student/, ['Emil', 'Fay', 'Gil', 'Hana'], ['Hana', 'Gil', 'Fay', 'Emil']],
  ])('by %s, and turned round', (column, first, second) => {
    show(all, told);
    // At first it is sorted by name.
    if (column.source === '^Student') fireEvent.click(head(/^Days/));
    fireEvent.click(head(column));
    expect(namesShown()).toEqual(first);
    const sorted = head(column).closest('th')!.getAttribute('aria-sort');
    fireEvent.click(head(column));
    expect(namesShown()).toEqual(second);
    const turned = head(column).closest('th')!.getAttribute('aria-sort');
    expect(new Set([sorted, turned])).toEqual(new Set(['ascending', 'descending']));
    expect(
      screen.getAllByRole('columnheader').filter((one) => one.getAttribute('aria-sort')),
    ).toHaveLength(1);
  });
});

describe('what waits', () => {
  test.each<[what: string, told: Told[string], waiting: string]>([
    ['nothing', {}, '–'],
    ['a remark', { remarks: 1 }, '1 remark'],
    ['remarks', { remarks: 2 }, '2 remarks'],
    ['a file of a fortnight ago does not', { cameAt: at('2026-11-11') }, '–'],
    ['an older one does', { cameAt: at('2026-11-10') }, 'last file 15 days old'],
    ['a hand-over of a fortnight ago does not', { givenOn: '2026-11-11' }, '–'],
    ['an older one does', { givenOn: '2026-11-10' }, 'handed over 15 days ago'],
    ['both', { now: null, remarks: 3 }, 'no programme; 3 remarks'],
  ])('%s', (_, told, waiting) => {
    show([listed('Ivo'), listed('Jora')], { Ivo: told, Jora: {} });
    expect(textsOf('Ivo').at(-2)).toBe(waiting);
  });
});

test.each([
  [/^Ada$/, 'report'],
  [/^Lesson of Ada$/, 'lesson'],
  [/^List of Ada$/, 'today'],
])('one tap on %s shows the student there', async (button, where) => {
  const { show: shown } = show([listed('Ben'), listed('Ada')], { Ada: {}, Ben: {} });
  fireEvent.click(within(screen.getByRole('table')).getByRole('button', { name: button }));
  expect(shown).toHaveBeenCalledWith('id of Ada');
  await expect.poll(() => route.value.screen).toBe(where);
});

test('ten are seen at once; more can be searched, whatever the capitals and accents', () => {
  const ten = Array.from({ length: 10 }, (_, i) => listed(`Student ${i}`));
  show(ten, {});
  expect(screen.queryByLabelText('Find a student')).toBeNull();
  cleanup();
  show([...ten, listed('Zoë Ånd')], {});
  const field = screen.getByLabelText('Find a student');
  fireEvent.input(field, { target: { value: ' zoe a' } });
  expect(namesShown()).toEqual(['Zoë Ånd']);
  fireEvent.input(field, { target: { value: 'nobody' } });
  expect(screen.queryByRole('table')).toBeNull();
  expect(screen.getByText('No student is called that.')).toBeTruthy();
});

test('who is archived is folded away, not read, and can be taken back', () => {
  const { overlook, archive } = show([listed('Ada'), listed('Ben'), listed('Cleo', true)], {});
  expect(namesShown()).toEqual(['Ada', 'Ben']);
  expect(vi.mocked(overlook!).mock.calls[0]![0].students).not.toContain('id of Cleo');
  fireEvent.click(screen.getByRole('button', { name: 'Take back Cleo', hidden: true }));
  expect(archive).toHaveBeenCalledWith('id of Cleo', false);
});

test('the table as CSV, read back: in the order shown, with all students whatever is searched', async () => {
  const saved: Blob[] = [];
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    saved.push(blob as Blob);
    return 'blob:here';
  });
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
  show([listed('=Ada'), listed('Ben')], { '=Ada': { now: 0.9, remarks: 2 }, Ben: { now: 0.1 } });
  fireEvent.click(head(/^Ready today/));
  fireEvent.click(head(/Save as a table/));
  const table: string[][] = parse(await saved[0]!.text(), { bom: true });
  expect(table.slice(1).map((row) => [row[0], row[1], row.at(-1)])).toEqual([
    ['Ben', '10', ''],
    ["'=Ada", '90', '2 remarks'],
  ]);
});
