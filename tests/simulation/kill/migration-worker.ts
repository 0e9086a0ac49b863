/** A child process that brings a store up to date and kills itself (SIGKILL) before its n-th statement. Arguments: location, n. */
import Database from "better-sqlite3";
import pg from "pg";
import { openStore } from "../../../src/store/open.ts";

const [location = "", nth = "0"] = process.argv.slice(2);
let statements = 0;
function count(): void {
  if (++statements === Number(nth)) {
    process.kill(process.pid, "SIGKILL");
    for (;;) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1000);
  }
}

const { prepare } = Database.prototype;
Database.prototype.prepare = function (this: Database.Database, text: string) {
  count();
  return prepare.call(this, text);
} as typeof prepare;
const { query } = pg.Client.prototype;
pg.Client.prototype.query = function (this: pg.Client, ...args: unknown[]) {
  count();
  return (query as (...all: unknown[]) => unknown).apply(this, args);
} as typeof query;

const store = await openStore(location);
await store.close();
process.send?.(statements);
process.disconnect?.();
