/** The content security policy as a browser applies it, seen from a script of the page (page.evaluate is exempt). */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { SECURITY_HEADERS } from '../../service-worker/headers';
import { serveApp, siteFolder } from './app';
import { APP_PATH } from './app-path';
import { browseApp } from './browse';
import { deployWith } from './deploy';

/** Each must throw, be refused or do nothing. */
const PROBE = `
const attempts = {
  eval: () => eval('1'),
  function: () => new Function('return 1')(),
  innerHTML: () => { document.createElement('p').innerHTML = '<b>x</b>'; },
  blobWorker: () => new Worker(URL.createObjectURL(new Blob(['1']))),
  foreignWorker: () => new Worker('./assets/none.js'),
  secondPolicy: () => trustedTypes.createPolicy('sw', { createScriptURL: (url) => url }),
  scriptText: () => { document.createElement('script').text = 'window.ran = true'; },
  webAssembly: () => new WebAssembly.Module(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0])),
};
window.probed = Object.fromEntries(Object.entries(attempts).map(([name, attempt]) => {
  try { attempt(); return [name, 'allowed']; } catch { return [name, 'blocked']; }
}));
window.probed.otherHost = await fetch('https://localhost.invalid/').then(() => 'allowed', () => 'blocked');
document.documentElement.dataset.probed = 'yes';
`;

const app = browseApp();

test('the page gives the policy that the host gives', () => {
  const html = readFileSync(`${siteFolder()}/index.html`, 'utf8');
  const [, policy] = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(html) ?? [];
  expect(`${policy}; frame-ancestors 'none'`).toBe(SECURITY_HEADERS['Content-Security-Policy']);
});

test('a script that gets into the page can make no other script, nor reach another host', async () => {
  const deploy = await deployWith('probe', PROBE);
  const server = await serveApp({ [APP_PATH]: deploy.folder });
  const page = await app.browser.newPage();
  await page.goto(server.url);
  await page.locator('[data-probed]').waitFor({ state: 'attached' });
  const probed = await page.evaluate(
    () => (window as unknown as { probed: Record<string, string> }).probed,
  );
  expect(Object.keys(probed)).toHaveLength(9);
  expect(Object.entries(probed).filter(([, outcome]) => outcome !== 'blocked')).toEqual([]);
  await page.close();
  await server.kill();
  deploy.remove();
});

test('no screen asks for what the policy forbids', async () => {
  const { page, errors } = await app.newDevice();
  for (const screen of ['start', 'today', 'map', 'report', 'settings', 'help']) {
    await page.goto(`${app.url}#/${screen}`);
    await page.locator('#app h1').waitFor();
  }
  expect(errors).toEqual([]);
});
