/** Programs that the tests of sound take from the system. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** As root on Debian it installs packages of the distribution that are missing. Throws what to do elsewhere. */
export function need(isThere: () => boolean, packages: readonly string[]): void {
  if (isThere()) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    for (const args of [['update'], ['install', '-y', '--no-install-recommends', ...packages]]) {
      const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
      spawnSync('apt-get', ['-q', ...args], { stdio: ['ignore', 'ignore', 'inherit'], env });
    }
  }
  if (isThere()) return;
  const names = packages.join(' ');
  throw new Error(`not found: ${names}. Install them (Debian: apt-get install ${names})`);
}

export const isProgram = (name: string): boolean => spawnSync(name, ['--version']).status === 0;
