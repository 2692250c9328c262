/** What the page asks of the thread that reads how all students stand, and what that answers. */
import type { Failure } from './failure';
import type { Overview, StudioOrder } from './studio';

export type StudioWish = StudioOrder & { readonly database: string };

export type StudioAnswer =
  | { readonly outcome: 'read'; readonly overview: Overview }
  | { readonly outcome: 'done' }
  | { readonly outcome: 'failed'; readonly failure: Failure };
