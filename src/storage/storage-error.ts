/** What can be wrong with a store; stable, for logs and exit codes. */
export type StorageErrorCode =
  | 'unreadableWalk'
  | 'unreadableReply'
  | 'cannotOpen'
  | 'settingRefused'
  | 'newerStore'
  | 'migrationFailed'
  | 'unavailable'
  | 'closed';

/**
 * The environment of a store is broken: `code` says how, `where` is the file, the walk id or the message,
 * and the message says what to do next. Nothing is removed or overwritten when it is thrown.
 */
export class StorageError extends Error {
  override readonly name = 'StorageError';
  readonly code: StorageErrorCode;
  readonly where: string;

  constructor(code: StorageErrorCode, where: string, message: string, cause?: unknown) {
    super(message, cause === undefined ? {} : { cause });
    this.code = code;
    this.where = where;
  }
}
