/** Runs as a worker: SQLite's own check of a whole file takes long and must not hold up anybody. */
import { parentPort, workerData } from "node:worker_threads";
import Database from "better-sqlite3";

const database = new Database((workerData as { file: string }).file, { readonly: true, timeout: 1000 });
const found = database.pragma("integrity_check(5)") as { integrity_check: string }[];
database.close();
parentPort?.postMessage(found.map((row) => row.integrity_check).join("; "));
