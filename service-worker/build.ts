/**
 * Builds the site: the page, the service worker, and into the worker the list of files to keep.
 *
 *   tsx service-worker/build.ts [--out dist] [--kill]
 *
 * APP_PATH is the path at which the app will live ("/" unless set, "/studio/arpeggiary/"). It becomes the id of the
 * installed app, so it must never change later. --kill puts the kill switch in the place of the worker.
 */
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build, createLogger, type InlineConfig } from 'vite';
import { injectManifest } from 'workbox-build';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** How long a plugin took is no fault of the build. */
const NO_TIMINGS = { pluginTimings: false };
const HASHED = /^assets\/.+-[\w-]{8}\.\w+$/;

async function viteBuild(config: InlineConfig): Promise<void> {
  const warnings: string[] = [];
  const logger = createLogger('error');
  logger.warn = (text) => void warnings.push(text);
  logger.warnOnce = logger.warn;
  await build({ customLogger: logger, logLevel: 'error', ...config });
  if (warnings.length > 0) throw new Error(`the build warns:\n${warnings.join('\n')}`);
}

async function buildPage(out: string): Promise<void> {
  await viteBuild({
    configFile: join(ROOT, 'vite.config.ts'),
    root: join(ROOT, 'src'),
    build: {
      outDir: out,
      reportCompressedSize: false,
      rolldownOptions: { checks: NO_TIMINGS },
    },
  });
}

/** Not Vite's library mode: that leaves `process.env` in the worker, which then fails to start. */
async function buildWorker(name: 'sw' | 'kill', out: string): Promise<void> {
  await viteBuild({
    configFile: false,
    root: ROOT,
    publicDir: false,
    build: {
      target: 'es2022',
      outDir: out,
      emptyOutDir: false,
      modulePreload: false,
      reportCompressedSize: false,
      rolldownOptions: {
        checks: NO_TIMINGS,
        input: join(ROOT, `service-worker/${name}.ts`),
        output: { format: 'iife', entryFileNames: 'sw.js', codeSplitting: false },
      },
    },
  });
}

/** A browser takes a relative id from the root of the host, where two apps would collide; so it is written out. */
function setAppId(out: string, appPath: string): void {
  if (!/^\/(?:.+\/)?$/.test(appPath)) throw new Error(`APP_PATH must be like "/a/b/": ${appPath}`);
  const file = join(out, 'app.webmanifest');
  const manifest = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  writeFileSync(file, JSON.stringify({ ...manifest, id: appPath }, null, 2));
}

/**
 * Writes sw.js, with the list of all files of the site folder in it. Every file has its sum, so a worker whose files
 * do not all arrive as built (a deploy half done, a page in place of a script) is never installed.
 */
export async function addWorker(out: string): Promise<void> {
  const scratch = mkdtempSync(join(tmpdir(), 'arpeggiary-worker-'));
  try {
    await buildWorker('sw', scratch);
    await injectFiles(join(scratch, 'sw.js'), out);
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

async function injectFiles(swSrc: string, out: string): Promise<void> {
  const doubts: string[] = [];
  const { warnings } = await injectManifest({
    swSrc,
    swDest: join(out, 'sw.js'),
    globDirectory: out,
    globPatterns: ['**/*.{html,js,css,webmanifest,png,svg,woff2,ttf}'],
    // The system takes its pictures of the app once, when it is installed.
    globIgnores: ['**/*.map', 'sw.js', 'screenshots/**', 'icons/*.png', 'icons/maskable.svg'],
    dontCacheBustURLsMatching: HASHED,
    manifestTransforms: [
      (entries) => {
        const wrong = entries.filter((e) => HASHED.test(e.url) !== (e.revision === null));
        doubts.push(...wrong.map((e) => `${e.url} has revision ${e.revision}`));
        const manifest = entries.map(({ url, revision, size }) => {
          const integrity = integrityOf(join(out, url));
          // The beginning of the sum tells two contents apart as well as Workbox's own, and is already in the worker.
          const short = revision === null ? null : integrity.slice('sha256-'.length, 24);
          return { url, revision: short, integrity, size };
        });
        return { manifest, warnings: [] };
      },
    ],
  });
  doubts.push(...warnings);
  if (doubts.length > 0) throw new Error(`the list of files is not right:\n${doubts.join('\n')}`);
}

/** SHA-256, not longer: it guards against accidents, and these sums are a quarter of the worker's size. */
function integrityOf(file: string): string {
  return `sha256-${createHash('sha256').update(readFileSync(file)).digest('base64')}`;
}

/** Replaces the worker of a site folder; the page stays as it is. */
export async function buildKillSwitch(out: string): Promise<void> {
  await buildWorker('kill', out);
}

async function buildSite(out: string, appPath: string): Promise<void> {
  await buildPage(out);
  setAppId(out, appPath);
  await addWorker(out);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({
    options: {
      out: { type: 'string', default: 'dist' },
      kill: { type: 'boolean', default: false },
    },
  });
  const out = resolve(values.out);
  if (values.kill) await buildKillSwitch(out);
  else await buildSite(out, process.env.APP_PATH ?? '/');
}
