/** A copy to keep while Gleed runs, bringing one back, and looking whether every page is whole. */
import { existsSync, renameSync, rmSync } from "node:fs";
import { copyFile } from "node:fs/promises";
import Database from "better-sqlite3";
import { asStoreError } from "../store/errors.ts";
import { isPostgres, openStore } from "../store/open.ts";
import { CannotMove, copyTo, move } from "./move.ts";

/** Into a file that is a whole SQLite store by itself, whatever the source is. Written beside it first, so that a broken one never bears its name. */
export async function backup(database: string, file: string): Promise<string> {
  if (existsSync(file)) throw new CannotMove(`${file} exists already; name a new file.`);
  const part = `${file}.part`;
  remove(part);
  try {
    if (isPostgres(database)) await copyTo(database, part);
    else await online(database, part);
    const found = await check(part);
    if (!found.ok) throw new CannotMove(`the copy is not whole (${found.detail}); nothing was kept.`);
    remove(part, SIDE_FILES);
    renameSync(part, file);
  } catch (error) {
    remove(part);
    throw error;
  }
  return `Copied into ${file}, every page checked.`;
}

/** SQLite's own way: page by page, started again by itself when somebody writes in between. */
async function online(database: string, file: string): Promise<void> {
  if (!existsSync(database)) throw new CannotMove(`there is no database at ${database}.`);
  const source = new Database(database, { readonly: true });
  try {
    await source.backup(file);
  } catch (error) {
    throw asStoreError(error);
  } finally {
    source.close();
  }
}

/** What was there before is kept beside it. */
export async function restore(file: string, database: string): Promise<string> {
  if (!existsSync(file)) throw new CannotMove(`there is no file ${file}.`);
  const found = await check(file);
  if (!found.ok) throw new CannotMove(`${file} is not whole (${found.detail}); it was not restored.`);
  if (isPostgres(database)) {
    await move(file, database);
    return `Restored from ${file} into PostgreSQL.`;
  }
  const before = `${database}.before-restore`;
  if (existsSync(database)) {
    if (existsSync(before)) throw new CannotMove(`${before} exists already; move it away first.`);
    await unused(database);
    renameSync(database, before);
  }
  remove(database, SIDE_FILES);
  await copyFile(file, database);
  const again = await check(database);
  if (!again.ok) throw new CannotMove(`the restored database is not whole (${again.detail}); the former one is ${before}.`);
  return `Restored from ${file}.${existsSync(before) ? ` The former database is ${before}; delete it when all is well.` : ""}`;
}

/** Also settles its log into it, so that the file alone is the whole of it. */
async function unused(database: string): Promise<void> {
  const lock = new Database(`${database}-delivering`, { timeout: 0 });
  try {
    lock.exec("begin exclusive");
  } catch {
    throw new CannotMove("a running Gleed uses this database; stop it first.");
  } finally {
    lock.close();
  }
  const settled = new Database(database);
  try {
    settled.pragma("wal_checkpoint(TRUNCATE)");
  } catch {
    // a damaged database is being replaced: it is kept as it is
  } finally {
    settled.close();
  }
}

/** Every page and index of SQLite; whether it answers of PostgreSQL, which minds its pages itself. */
export async function check(database: string): Promise<{ ok: boolean; detail: string }> {
  if (!isPostgres(database) && !existsSync(database)) return { ok: false, detail: `there is no database at ${database}` };
  try {
    const store = await openStore(database, { check_limit_ms: 600_000 });
    try {
      return await store.check("thorough");
    } finally {
      await store.close();
    }
  } catch (error) {
    return { ok: false, detail: error instanceof Error ? error.message : String(error) };
  }
}

const SIDE_FILES = ["-wal", "-shm", "-delivering", "-journal"] as const;
function remove(file: string, endings: readonly string[] = ["", ...SIDE_FILES]): void {
  for (const ending of endings) rmSync(`${file}${ending}`, { force: true });
}
