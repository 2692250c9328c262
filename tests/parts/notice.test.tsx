import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Notice, say, unsay } from '../../src/parts/notice/notice';

afterEach(() => {
  cleanup();
  unsay();
});

test('the focus stays at the message when its action is taken, and is not thrown to the top of the page', async () => {
  const undo = vi.fn<() => void>(() => say('Undone.'));
  render(<Notice />);
  say('Saved.', { label: 'Undo', do: undo });
  const button = await screen.findByRole('button', { name: 'Undo' });
  button.focus();
  fireEvent.click(button);
  expect(undo).toHaveBeenCalledOnce();
  await screen.findByText('Undone.');
  expect(document.activeElement).toBe(screen.getByRole('status'));
});
