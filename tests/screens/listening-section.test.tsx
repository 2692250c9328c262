import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test } from 'vitest';
import { prefer, preferences, type Preferences } from '../../src/preferences';
import { ListeningSection } from '../../src/screens/settings/listening-section';

const page = document.body;
afterEach(() => render(null, page));

async function shown(wish: Partial<Preferences>) {
  await act(async () => {
    await prefer(wish).catch(() => undefined);
    render(<ListeningSection />, page);
  });
  const groups = [...page.querySelectorAll('fieldset')];
  const group = groups.find((one) => one.textContent?.startsWith('The page turns')) ?? null;
  const words = [...(group?.querySelectorAll('label') ?? [])].map((label) => label.textContent);
  return { group, words };
}

test('what turns the page is chosen where one chooses what is listened to, and only if something is', async () => {
  expect((await shown({ ear: 'none' })).group).toBeNull();
  expect((await shown({ ear: 'microphone' })).group).not.toBeNull();
  const { group, words } = await shown({ ear: 'midi', beat: 'seen', turner: 'beat' });
  expect(words).toEqual(['by the beat', 'with you']);
  await act(() => group!.querySelector<HTMLInputElement>('[value="player"]')!.click());
  expect(preferences.value.turner).toBe('player');
  expect((await shown({ beat: 'off' })).words).toEqual(['by hand', 'with you']);
});

test('says that a heard beat turns the page all the same where a keyboard is heard', async () => {
  const note = 'While the beat is heard it turns the page';
  await shown({ ear: 'midi', turner: 'player', beat: 'seen' });
  expect(page.textContent).not.toContain(note);
  await shown({ beat: 'heard' });
  expect(page.textContent).toContain(note);
  // By the microphone the beat only counts in.
  await shown({ ear: 'microphone' });
  expect(page.textContent).not.toContain(note);
});
