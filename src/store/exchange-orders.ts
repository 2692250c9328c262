/** What the page asks of the thread that takes files in, and what that answers. */
import type { BackupPreview } from '../../shared/formats/backup';

export type Order = { readonly number: number } & (
  | { readonly do: 'preview'; readonly database: string; readonly file: Blob }
  | { readonly do: 'restore' }
);

/** An error as it can be sent from thread to thread. */
export interface Failure {
  readonly name: string;
  readonly message: string;
  readonly kind?: string;
  readonly line?: number | null;
}

export type Answer = { readonly number: number } & (
  | { readonly outcome: 'done'; readonly preview: BackupPreview | null }
  | { readonly outcome: 'failed'; readonly failure: Failure }
);
