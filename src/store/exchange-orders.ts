/** What the page asks of the thread that takes files in, and what that answers. */
import type { BackupPreview } from '../../shared/formats/backup';
import type { Failure } from './failure';

export type Order = { readonly number: number } & (
  | { readonly do: 'preview'; readonly database: string; readonly file: Blob }
  | { readonly do: 'restore' }
);

export type Answer = { readonly number: number } & (
  | { readonly outcome: 'done'; readonly preview: BackupPreview | null }
  | { readonly outcome: 'failed'; readonly failure: Failure }
);
