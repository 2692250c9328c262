/** The modern build of workbox-window: its package's `module` field names the larger one for ES5. */
declare module 'workbox-window/build/workbox-window.prod.mjs' {
  export * from 'workbox-window';
}
