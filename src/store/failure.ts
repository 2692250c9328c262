/** Errors as they are sent from thread to thread. */
import { BackupError } from '../../shared/formats/backup';
import { StoreError, type StoreErrorKind } from './errors';

export interface Failure {
  readonly name: string;
  readonly message: string;
  /** Of a StoreError. */
  readonly kind?: StoreErrorKind;
  /** Of a BackupError. */
  readonly line?: number | null;
}

export function failureOf(error: unknown): Failure {
  const { name, message, kind, line } = error as Failure;
  return { name, message, ...(kind && { kind }), ...(line !== undefined && { line }) };
}

export function errorOf({ name, message, kind, line = null }: Failure): Error {
  if (name === 'BackupError') return new BackupError(message, line);
  // A kind has its own message already.
  return kind === undefined ? new StoreError('failed', { detail: message }) : new StoreError(kind);
}
