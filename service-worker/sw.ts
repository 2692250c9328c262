/**
 * The service worker: keeps the files of one version and answers with them, network or not. It takes over only when the
 * page asks (src/update) or when every tab is closed: an open tab must keep the files it was built with.
 */
import { addPlugins, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope & {
  /** Put in by service-worker/build.ts. */
  readonly __WB_MANIFEST: { url: string; revision: string | null; integrity: string }[];
};

// While a deploy is half done, a host may send its page in the place of a new script and let it be cached for a year with
// the header meant for scripts. So no file is taken from the browser's cache without asking the host again.
addPlugins([
  { requestWillFetch: async ({ request }) => new Request(request, { cache: 'no-cache' }) },
]);
precacheAndRoute(self.__WB_MANIFEST);

// The app is one document; screens are behind the hash. It is the answer to its own address with any query ("?source=x"),
// but to no other: from a deeper address its relative links would lead nowhere, and a missing script must not become HTML.
const { scope } = self.registration;
const { pathname } = new URL(scope);
const page = new RegExp(`^${pathname.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)}(\\?|$)`);
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html'), { allowlist: [page] }));

// A file from the system's share sheet comes as a form that is posted (share_target in the manifest). It stays on the
// device: the page takes it from here (src/launch.ts), as only the page can read it.
registerRoute(
  `${scope}shared`,
  async ({ request }) => {
    const form = new Response(await request.blob(), { headers: request.headers });
    // Like the names of the other caches, so that the kill switch finds it.
    await (await caches.open(`shared-${scope}`)).put(request.url, form);
    return Response.redirect('./?shared', 303);
  },
  'POST',
);

self.addEventListener('message', (event) => {
  const data: unknown = event.data;
  if (typeof data !== 'object' || data === null || !('type' in data)) return;
  if (data.type === 'SKIP_WAITING') void self.skipWaiting();
});
