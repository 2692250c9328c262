import { signal } from '@preact/signals';
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { ProgrammeForm } from '../../src/parts/programme-form/programme-form';

afterEach(cleanup);

const form = signal<Programme>(DEFAULT_PROGRAMME);
beforeEach(() => {
  form.value = DEFAULT_PROGRAMME;
});

const Form = () => (
  <ProgrammeForm
    today="2026-11-25"
    value={form.value}
    onChange={(programme) => {
      form.value = programme;
    }}
  />
);

const ONE = 'One tempo for all chords of a stage';
const SOME = 'Some chords at a tempo of their own';

const field = (name: string): HTMLInputElement => screen.getByLabelText(name);
const set = (name: string, mark: number) =>
  fireEvent.change(field(name), { target: { value: String(mark) } });
const left = () => form.value.stages['left.2'];

test('a family of chords can have its own tempo, and has none where it is that of the stage', () => {
  render(<Form />);
  set('Tempo of dominant sevenths, inversions, left hand, two octaves', 48);
  expect(left().targets).toEqual({ 'dominant-65': 192, 'dominant-43': 192, 'dominant-42': 192 });
  expect(screen.getByText(SOME)).toBeTruthy();
  set('Tempo of diminished sevenths, left hand, two octaves', 50);
  expect(left().targets).toMatchObject({ 'dominant-42': 192, 'diminished-7': 200 });
  set('Tempo of dominant sevenths, inversions, left hand, two octaves', 60);
  set('Tempo of diminished sevenths, left hand, two octaves', 60);
  expect(form.value).toEqual(DEFAULT_PROGRAMME);
  expect(screen.getByText(ONE)).toBeTruthy();
});

test('they stay when the stage gets another tempo or other chords, and keep their speed by another beat', () => {
  render(<Form />);
  set('Tempo of diminished sevenths, left hand, two octaves', 48);
  set('Tempo of left hand, two octaves', 72);
  expect(left()).toEqual({ asked: true, target: 288, targets: { 'diminished-7': 192 } });
  expect(field('Tempo of triads, root position, left hand, two octaves').value).toBe('72');
  fireEvent.click(screen.getByRole('radio', { name: 'three notes a beat' }));
  expect(left()).toEqual({ asked: true, target: 288, targets: { 'diminished-7': 192 } });
  expect(field('Tempo of diminished sevenths, left hand, two octaves').value).toBe('64');
});

test('chords that are not asked for have none to set', () => {
  const goal = { ...DEFAULT_PROGRAMME.stages['left.2'], chords: ['major-53'] as const };
  form.value = { ...DEFAULT_PROGRAMME, stages: { ...DEFAULT_PROGRAMME.stages, 'left.2': goal } };
  render(<Form />);
  expect(screen.getAllByLabelText(/, left hand, two octaves$/)).toHaveLength(1);
  expect(screen.getAllByLabelText(/, right hand, two octaves$/)).toHaveLength(6);
});
