/** What can go wrong with a store, as a caller can act on it. */
export abstract class StoreError extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause });
    this.name = new.target.name;
  }
}
/** Locked or overloaded for longer than we wait; trying again later may help. */
export class StoreBusy extends StoreError {}
/** No connection, or the file cannot be opened. */
export class StoreUnreachable extends StoreError {}
/** The disk is full: nothing was written, reading still works. */
export class StoreFull extends StoreError {}
/** Damaged, not a database of ours, or made by a newer Gleed: needs a person. */
export class StoreBroken extends StoreError {}

/** Thrown inside a transaction to undo it; never leaves the store. */
export class Stale extends Error {}
/** Thrown inside a transaction to undo it; never leaves the store. */
export class Gone extends Error {}

/** A row that this one points to has gone: somebody was forgotten meanwhile. */
export const isBrokenReference = (error: unknown): boolean => ["SQLITE_CONSTRAINT_FOREIGNKEY", "23503"].includes(code(error));
/** PostgreSQL ended one of two transactions that waited for each other. */
export const isConflict = (error: unknown): boolean => ["40001", "40P01"].includes(code(error));
export const isBusy = (error: unknown): boolean => /^SQLITE_(BUSY|LOCKED)/.test(code(error)) || code(error) === "55P03";

const UNREACHABLE = [
  /^SQLITE_(CANTOPEN|READONLY|PERM|IOERR)/,
  /^(ECONN|ENOTFOUND|EAI_|EPIPE|ETIMEDOUT|EHOST|ENET|EACCES|ENOENT|ENOTDIR|EROFS|EISDIR)/,
  // PostgreSQL's classes: connection, shutting down, refused, no such database
  /^(08|57P|28|3D000)/,
];
const FULL = /^(SQLITE_FULL|53100|ENOSPC)/;
const BUSY = /^(SQLITE_BUSY|SQLITE_LOCKED|55P03|53300|57014)/;

/** Any error of a driver as one of ours; errors that are ours already pass. */
export function asStoreError(error: unknown): Error {
  if (error instanceof StoreError || error instanceof Stale || error instanceof Gone || error instanceof RangeError) return error;
  const found = code(error);
  const words = error instanceof Error ? error.message : String(error);
  if (BUSY.test(found) || /timeout exceeded when trying to connect/.test(words)) return new StoreBusy(`the store is busy: ${words}`, error);
  if (FULL.test(found)) return new StoreFull(`the disk of the store is full: ${words}`, error);
  if (UNREACHABLE.some((pattern) => pattern.test(found)) || /Connection terminated|Query read timeout|not queryable/.test(words)) {
    return new StoreUnreachable(`the store cannot be reached: ${words}`, error);
  }
  if (found.startsWith("SQLITE_") || /^[0-9A-Z]{5}$/.test(found) || /corrupted migrations/.test(words)) {
    return new StoreBroken(`the store is broken: ${words}`, error);
  }
  return error instanceof Error ? error : new Error(words);
}

function code(error: unknown): string {
  if (error instanceof AggregateError) return code(error.errors[0]);
  return typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
}
