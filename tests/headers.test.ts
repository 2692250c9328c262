import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { SECURITY_HEADERS } from '../service-worker/headers';

test('README tells other hosts the same headers as the app’s own server sends', () => {
  const readme = readFileSync('README.md', 'utf8');
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) {
    const said =
      name === 'Content-Security-Policy' ? `${name}: frame-ancestors 'none'` : `${name}: ${value}`;
    expect(readme).toContain(`\`${said}\``);
  }
});
