import { beforeEach, expect, test } from 'vitest';
import { prefer } from '../../src/preferences';
import { standAction } from '../../src/screens/play/pedal';

/** What a key does while the element that the markup begins with has the focus. */
function press(key: string, tag = 'p', attributes: Record<string, string> = {}, init = {}) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  document.body.append(element);
  let action: unknown;
  element.addEventListener('keydown', (event) => {
    action = standAction(event);
  });
  element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, ...init }));
  return action;
}

beforeEach(() => document.body.replaceChildren());

test('a pedal’s keys go on and back, and Escape stops', () => {
  for (const key of ['PageDown', 'ArrowRight', 'ArrowDown', ' ', 'Enter']) {
    expect(press(key)).toBe('forward');
  }
  for (const key of ['PageUp', 'ArrowLeft', 'ArrowUp']) expect(press(key)).toBe('back');
  expect(press('Escape')).toBe('stop');
  expect(press('a')).toBeNull();
});

test('a key that is held down counts once', () => {
  expect(press('PageDown', 'p', {}, { repeat: true })).toBeNull();
});

test('a key with a modifier belongs to the browser', () => {
  expect(press('ArrowLeft', 'p', {}, { altKey: true })).toBeNull();
  expect(press('PageDown', 'p', {}, { ctrlKey: true })).toBeNull();
});

test('a control keeps the keys that it uses itself, and only those', () => {
  expect(press('Enter', 'button')).toBeNull();
  expect(press(' ', 'a', { href: '#/today' })).toBeNull();
  expect(press('PageDown', 'button')).toBe('forward');
  expect(press('ArrowRight', 'input', { type: 'radio' })).toBeNull();
  expect(press('PageDown', 'input', { type: 'radio' })).toBe('forward');
  for (const type of ['number', 'text', 'range', 'date']) {
    expect(press('PageDown', 'input', { type })).toBeNull();
    expect(press('ArrowUp', 'input', { type })).toBeNull();
  }
  expect(press('PageDown', 'select')).toBeNull();
});

test('while a question is open, no pedal answers it', () => {
  const dialog = document.createElement('dialog');
  dialog.setAttribute('open', '');
  document.body.append(dialog);
  expect(press('PageDown')).toBeNull();
});

test('keys that the person has taught act like the others', async () => {
  await prefer({ forwardKeys: ['F9'], backKeys: ['b'] });
  expect(press('F9')).toBe('forward');
  expect(press('b')).toBe('back');
  await prefer({ forwardKeys: [], backKeys: [] });
  expect(press('F9')).toBeNull();
});
