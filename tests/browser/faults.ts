/** WCAG 2.2 A and AA by axe-core. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe finds wrong, as "rule: element". Evaluated as text, which the page's policy does not concern. */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate((values) => {
    const { axe: inPage } = globalThis as unknown as { axe: typeof axe };
    return inPage.run(document, { runOnly: { type: 'tag', values } });
  }, STANDARDS);
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target}`));
}
