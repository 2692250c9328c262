/**
 * The kill switch: put in the place of sw.js, it removes the worker and its stored files, so that every browser gets the
 * app from the host again. Practice data is in IndexedDB and is not touched.
 */
declare const self: ServiceWorkerGlobalScope;

async function leave(): Promise<void> {
  // Another app may live on the same host: only the caches of this scope are ours (Workbox ends their names with it).
  const names = (await caches.keys()).filter((name) => name.endsWith(self.registration.scope));
  await Promise.all(names.map((name) => caches.delete(name)));
  await self.registration.unregister();
  const pages = await self.clients.matchAll({ type: 'window' });
  // A page may be closing just now; then there is nothing to reload.
  await Promise.allSettled(pages.map((page) => page.navigate(page.url)));
}

self.addEventListener('install', () => void self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(leave()));
