/**
 * The one Trusted Types policy of the page. The content security policy lets no string become a script; the two places
 * that need an address (the service worker and the metronome's worker) get it from here.
 */

/** Our own built scripts, seen from the folder of the page: the service worker, and files with a hash in the name. */
const OWN_SCRIPT = /^(?:sw\.js|assets\/[\w.-]+-[\w-]{8}\.js)$/;

function checked(address: string): string {
  const folder = new URL('.', document.baseURI);
  const url = new URL(address, folder);
  const isOurs = url.href.startsWith(folder.href);
  const path = url.href.slice(folder.href.length);
  // The development server names scripts otherwise, and has no hashes.
  if (isOurs && (OWN_SCRIPT.test(path) || import.meta.env.DEV)) return url.href;
  throw new TypeError(`not a script of this app: ${address}`);
}

// Browsers without Trusted Types (Safari before 26, Firefox before 148) still get the check.
const policy = window.trustedTypes?.createPolicy('sw', { createScriptURL: checked });

/**
 * The address as the browser demands it for `new Worker` and `register`. Throws a TypeError for any address that is not
 * one of the app's own scripts. Example: `new Worker(trustedScriptUrl(tickUrl), { type: 'module' })`.
 *
 * At run time it is a TrustedScriptURL; the DOM types of those two calls still ask for a string.
 */
export function trustedScriptUrl(address: string): string {
  return policy === undefined
    ? checked(address)
    : (policy.createScriptURL(address) as unknown as string);
}
