/** Programs that the tests take from the system. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

export interface Program {
  isThere(): boolean;
  /** Debian's packages of it. */
  readonly packages: readonly string[];
}

/** As root on Debian it installs those that are missing, in one go. Throws what to do elsewhere. */
export function need(...programs: readonly Program[]): void {
  const missing = (): readonly string[] =>
    programs.filter((program) => !program.isThere()).flatMap(({ packages }) => packages);
  const wanted = missing();
  if (wanted.length === 0) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    for (const args of [['update'], ['install', '-y', '--no-install-recommends', ...wanted]]) {
      const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
      spawnSync('apt-get', ['-q', ...args], { stdio: ['ignore', 'ignore', 'inherit'], env });
    }
  }
  const names = missing().join(' ');
  if (names === '') return;
  throw new Error(`not found: ${names}. Install them (Debian: apt-get install ${names})`);
}

/** Whether a program can be started, by the option that makes it tell its version. */
export const isProgram = (name: string, option = '--version'): boolean =>
  spawnSync(name, [option]).status === 0;
