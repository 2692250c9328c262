/** What can go wrong with the store, told so that the person knows what to do. */

export type StoreErrorKind =
  /** No room left on the device. */
  | 'full'
  /** A newer version of the app has the database open. */
  | 'outdated'
  /** An older version of the app keeps a newer one from opening the database. */
  | 'blocked'
  /** The browser keeps nothing for this page. */
  | 'unavailable'
  /** The student is no longer on this device. */
  | 'removed'
  /** A fault of ours: an event that the log would not take. */
  | 'invalid'
  | 'failed';

const MESSAGES: Readonly<Record<StoreErrorKind, string>> = {
  full: 'There is no room left on this device, so this was not saved. Free some space and try again; a backup of what is saved can be made in the settings.',
  outdated: 'A newer version of Arpeggiary is open in another window. Reload this page to go on.',
  blocked:
    'Another window still has an older version of Arpeggiary open. Close or reload it, and this one goes on by itself.',
  unavailable:
    'The browser does not let Arpeggiary keep anything here. Allow this site to store data, or open it outside a private window.',
  removed:
    'This student has been removed from this device in another window, so this was not saved.',
  invalid: 'This could not be saved because of a fault in Arpeggiary.',
  failed: 'Saving did not work. Try again; if it fails again, reload the page.',
};

export class StoreError extends Error {
  override readonly name = 'StoreError';
  constructor(
    readonly kind: StoreErrorKind,
    options?: { readonly cause?: unknown; readonly detail?: string },
  ) {
    const detail = options?.detail === undefined ? '' : ` (${options.detail})`;
    super(MESSAGES[kind] + detail, { cause: options?.cause });
  }
}

/** Browsers disagree on the class of these errors (QuotaExceededError has its own in Chromium), not on the names. */
export const nameOf = (error: unknown): string => (error instanceof Error ? error.name : '');

const KINDS: Readonly<Record<string, StoreErrorKind>> = {
  QuotaExceededError: 'full',
  VersionError: 'outdated',
  SecurityError: 'unavailable',
};

/** Any error as a StoreError; one that is not about storage (a file that is no backup) passes through. */
export function storeErrorOf(error: unknown): Error {
  if (error instanceof StoreError || nameOf(error) === 'BackupError') return error as Error;
  return new StoreError(KINDS[nameOf(error)] ?? 'failed', { cause: error });
}

/**
 * Whether the browser took the connection away, so that another try on a new one may succeed. iOS closes connections of
 * pages in the background: "database connection is closing", "Connection to Indexed Database server lost".
 */
export const isLostConnection = (error: unknown): boolean =>
  ['InvalidStateError', 'AbortError', 'UnknownError'].includes(nameOf(error));
