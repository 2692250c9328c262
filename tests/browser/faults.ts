/** What axe-core finds wrong, as "rule: element". It goes into the page as text, which the page's policy does not concern. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const OF_COLOUR = ['color-contrast', 'link-in-text-block'];

async function inPage(page: Page, part: string, options: axe.RunOptions) {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  const { violations } = await page.evaluate(
    ([within, how]) => {
      const { axe: its } = globalThis as unknown as { axe: typeof axe };
      return its.run(within, how);
    },
    [part, options] as const,
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}

/**
 * In the page, by WCAG 2.2 A and AA, in light; and in the dark by the rules that look at colours, as nothing else differs.
 * It is shown as high as it is: axe takes what just now lies half under a bar at the edge of the screen for too small,
 * though it can be scrolled out from there.
 */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  const size = page.viewportSize()!;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ ...size, height: Math.max(size.height, height) });
  await page.emulateMedia({ colorScheme: 'light' });
  const faults = await inPage(page, 'html', { runOnly: { type: 'tag', values: STANDARDS } });
  await page.emulateMedia({ colorScheme: 'dark' });
  const inTheDark = await inPage(page, 'html', { runOnly: { type: 'rule', values: OF_COLOUR } });
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize(size);
  return [...faults, ...inTheDark.map((fault) => `in the dark, ${fault}`)];
}

/** In a part of it, by all rules: also by those that axe calls best practice. */
export const allFaultsIn = (page: Page, part: string): Promise<readonly string[]> =>
  inPage(page, part, {});
