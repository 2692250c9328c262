import { signal } from '@preact/signals';
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import type { ComponentChildren } from 'preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Whose, WhoseName } from '../../src/parts/page/whose';
import { route } from '../../src/route';
import { StudentsContext } from '../../src/store-context';
import type { Listed, Students } from '../../src/store/store';

afterEach(() => {
  cleanup();
  location.hash = '';
});

const listed = (name: string, isArchived = false): Listed => ({
  id: `id of ${name}`,
  name,
  namedUpTo: '',
  isArchived,
});

interface ShownProps {
  readonly students: Students;
  readonly children: ComponentChildren;
}

const Shown = ({ students, children }: ShownProps) => (
  <StudentsContext.Provider value={students}>{children}</StudentsContext.Provider>
);

function show(all: readonly Listed[], shown = 'id of Ada') {
  const asked = vi.fn<Students['show']>(() => Promise.resolve());
  const students = { listed: signal(all), shown: signal(shown), show: asked } as Partial<Students>;
  const { container } = render(
    <Shown students={students as Students}>
      <Whose />
    </Shown>,
  );
  return { container, asked };
}

test('with one student there is nothing of it', () => {
  expect(show([listed('Ada')]).container.innerHTML).toBe('');
});

test('without students of one’s own, as in the demonstration, neither', () => {
  expect(render(<Whose />).container.innerHTML).toBe('');
});

test('with few, another one is a tap away; who is archived is not there', () => {
  const { asked } = show([listed('Ada'), listed('Ben'), listed('Cleo', true)]);
  const names = screen.getAllByRole('button').map((button) => button.textContent);
  expect(names).toEqual(['Ada', 'Ben']);
  expect(screen.getByRole('button', { pressed: true }).textContent).toBe('Ada');
  fireEvent.click(screen.getByRole('button', { name: 'Ben' }));
  expect(asked).toHaveBeenCalledWith('id of Ben');
});

test('the page says whose it is also when all others are archived', () => {
  show([listed('Ada'), listed('Ben', true)]);
  expect(screen.getByRole('button', { pressed: true }).textContent).toBe('Ada');
});

test('many are a list', () => {
  const { asked } = show(['Ada', 'Ben', 'Cleo', 'Dora', 'Emil'].map((name) => listed(name)));
  const list = screen.getByLabelText<HTMLSelectElement>('Student');
  expect([list.value, list.options.length]).toEqual(['id of Ada', 5]);
  fireEvent.change(list, { target: { value: 'id of Emil' } });
  expect(asked).toHaveBeenCalledWith('id of Emil');
});

async function goThere(): Promise<void> {
  location.hash = '#/studio';
  await expect.poll(() => route.value.screen).toBe('studio');
}

test('a link leads to all students; there nobody is the one of the page, and a name leads to the list', async () => {
  await goThere();
  const { asked } = show([listed('Ada'), listed('Ben')]);
  expect(screen.getByRole('link', { current: 'page' }).textContent).toBe('All students');
  expect(screen.queryByRole('button', { pressed: true })).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: 'Ada' }));
  expect(asked).toHaveBeenCalledWith('id of Ada');
  await expect.poll(() => route.value.screen).toBe('today');
});

test('of many none is chosen there', async () => {
  await goThere();
  show(['Ada', 'Ben', 'Cleo', 'Dora', 'Emil'].map((name) => listed(name)));
  const list = screen.getByLabelText<HTMLSelectElement>('Student');
  expect(list.selectedOptions[0]!.textContent).toBe('One student…');
});

function nameAmong(all: readonly Listed[]): string {
  const students: Partial<Students> = { listed: signal(all), shown: signal('id of Ada') };
  const { container } = render(
    <Shown students={students as Students}>
      <WhoseName />
    </Shown>,
  );
  return container.textContent;
}

test('where nothing is to be tapped only the name stands, and nothing of one student alone', () => {
  expect(nameAmong([listed('Ben'), listed('Ada')])).toBe('Ada');
  expect(nameAmong([listed('Ada')])).toBe('');
});
