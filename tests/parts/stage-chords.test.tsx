import { signal } from '@preact/signals';
import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { StageChords } from '../../src/parts/programme-form/stage-chords';

afterEach(cleanup);

const form = signal<Programme>(DEFAULT_PROGRAMME);
beforeEach(() => {
  form.value = DEFAULT_PROGRAMME;
});

const Form = () => (
  <StageChords
    value={form.value}
    onChange={(programme) => {
      form.value = programme;
    }}
  />
);

const stage = (name: RegExp) => within(screen.getByRole('group', { name }));
const toggle = (name: RegExp, family: string) =>
  fireEvent.click(stage(name).getByRole('checkbox', { name: family }));
const LEFT = /^left hand, two octaves/;

test('a family of chords can be left out of one stage, and all eleven are no restriction', () => {
  render(<Form />);
  expect(screen.getByText('All eleven chords in each stage')).toBeTruthy();
  toggle(LEFT, 'diminished sevenths');
  expect(form.value.stages['left.2'].chords).toHaveLength(10);
  expect(form.value.stages['left.2'].chords).not.toContain('diminished-7');
  expect(form.value.stages['right.2']).toEqual(DEFAULT_PROGRAMME.stages['right.2']);
  expect(stage(/^left hand, two octaves: 10 of the eleven/).getAllByRole('checkbox')).toHaveLength(
    6,
  );
  toggle(LEFT, 'diminished sevenths');
  expect(form.value).toEqual(DEFAULT_PROGRAMME);
});

test('the last family of a stage stays', () => {
  render(<Form />);
  for (const family of [
    'triads, first inversion',
    'triads, second inversion',
    'dominant sevenths, root position',
    'dominant sevenths, inversions',
    'diminished sevenths',
  ]) {
    toggle(LEFT, family);
  }
  expect(form.value.stages['left.2'].chords).toEqual(['major-53', 'minor-53']);
  const last = stage(LEFT).getByRole('checkbox', { name: 'triads, root position' });
  expect(last.hasAttribute('disabled')).toBe(true);
  expect(screen.getByText('Not all eleven chords in each stage')).toBeTruthy();
});

test('a stage that is not asked for has no chords to choose', () => {
  render(<Form />);
  expect(screen.queryByRole('group', { name: /contrary motion/ })).toBeNull();
});
