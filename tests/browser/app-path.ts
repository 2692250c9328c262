/** All browser tests use a sub-path: what works there works at the root, not the other way round. */
export const APP_PATH = '/studio/arpeggiary/';
