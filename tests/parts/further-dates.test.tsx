import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { useState } from 'preact/hooks';
import { afterEach, expect, test } from 'vitest';
import { DEFAULT_PROGRAMME, MOST_FURTHER_DATES, type Programme } from '../../shared/log/programme';
import { ProgrammeForm } from '../../src/parts/programme-form/programme-form';

afterEach(cleanup);

function Form({ onChange }: { readonly onChange: (programme: Programme) => void }) {
  const [value, setValue] = useState<Programme>(DEFAULT_PROGRAMME);
  const change = (programme: Programme) => {
    setValue(programme);
    onChange(programme);
  };
  return <ProgrammeForm value={value} onChange={change} today="2026-11-25" />;
}

function filled() {
  let value: Programme = DEFAULT_PROGRAMME;
  render(<Form onChange={(programme) => (value = programme)} />);
  return () => value;
}

const add = () => fireEvent.click(screen.getByRole('button', { name: /Add a lesson/ }));

test('a lesson is added in a week’s time, named and moved to its day', () => {
  const value = filled();
  add();
  expect(value().furtherDates).toEqual([{ day: '2026-12-02', words: '' }]);
  fireEvent.input(screen.getByLabelText('What it is'), { target: { value: 'rehearsal' } });
  fireEvent.change(screen.getByLabelText('Also on'), { target: { value: '2026-12-10' } });
  expect(value().furtherDates).toEqual([{ day: '2026-12-10', words: 'rehearsal' }]);
});

test('the last one removed leaves a programme as it was before there were any', () => {
  const value = filled();
  add();
  fireEvent.click(screen.getByRole('button', { name: 'Remove' }));
  expect(value()).toEqual(DEFAULT_PROGRAMME);
});

test('no more can be added than a programme may hold', () => {
  const value = filled();
  for (let i = 0; i < MOST_FURTHER_DATES; i++) add();
  expect(value().furtherDates).toHaveLength(MOST_FURTHER_DATES);
  expect(screen.queryByRole('button', { name: /Add a lesson/ })).toBeNull();
});

test.each(['2126-12-10', '0026-12-10', '2026-11-24'])(
  'a day that no programme can hold is told, not taken: %s',
  (typed) => {
    const value = filled();
    add();
    for (const label of ['Also on', /Date of the examination/]) {
      const field = screen.getByLabelText(label);
      fireEvent.change(field, { target: { value: typed } });
      expect(screen.queryByRole('alert')).toBeNull();
      fireEvent.blur(field);
      expect(screen.getByRole('alert').textContent).toMatch(/^Not taken/);
      fireEvent.change(field, { target: { value: '2026-12-11' } });
      expect(screen.queryByRole('alert')).toBeNull();
    }
    expect(value()).toMatchObject({
      date: '2026-12-11',
      furtherDates: [{ day: '2026-12-11', words: '' }],
    });
  },
);

test('a date that is over stays, and is no fault while it is left alone', () => {
  const over = { ...DEFAULT_PROGRAMME, date: '2026-11-01' };
  render(<ProgrammeForm value={over} onChange={() => undefined} today="2026-11-25" />);
  fireEvent.blur(screen.getByLabelText(/Date of the examination/));
  expect(screen.queryByRole('alert')).toBeNull();
});
