/**
 * What a host should send with the files of the app. `npm start` and the test server send exactly this; README shows it
 * for other hosts. The page also carries POLICY as a meta tag, for hosts that send nothing; the worker cannot: its policy
 * only comes with its own response.
 */

/** The content security policy of src/index.html, word for word (a test compares them). */
export const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types sw',
].join('; ');

/** For every response. frame-ancestors cannot stand in a meta tag, so only the header has it. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': `${POLICY}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy':
    'geolocation=(), payment=(), usb=(), camera=(self), microphone=(self), midi=(self), screen-wake-lock=(self)',
};

/** Files under assets/ carry a hash of their content in the name, so they never change; all others may at any visit. A 404 gets 'no-store'. */
export function cacheControl(path: string): string {
  return /\/assets\/[^/]+-[\w-]{8}\.\w+$/.test(path)
    ? 'public, max-age=31536000, immutable'
    : 'no-cache';
}
