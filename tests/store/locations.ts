/** Where tests keep a store: a file, memory, or a database of its own on the server named by GLEED_TEST_POSTGRES. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";

export interface Location {
  readonly location: string;
  remove(): Promise<void>;
}
export interface Kind {
  readonly name: string;
  /** why it cannot be tested here */
  readonly missing?: string;
  fresh(): Promise<Location>;
}

export const server = process.env.GLEED_TEST_POSTGRES;

export const FILE: Kind = {
  name: "SQLite file",
  async fresh() {
    const folder = mkdtempSync(join(tmpdir(), "gleed-store-"));
    return { location: join(folder, "data", "gleed.db"), remove: async () => rmSync(folder, { recursive: true, force: true }) };
  },
};

export const MEMORY: Kind = {
  name: "SQLite memory",
  fresh: async () => ({ location: ":memory:", remove: async () => {} }),
};

let databases = 0;
export const POSTGRES: Kind = {
  name: "PostgreSQL",
  ...(server ? {} : { missing: "GLEED_TEST_POSTGRES names no server (tests/servers/postgres.sh starts one)" }),
  async fresh() {
    if (!server) throw new Error("no PostgreSQL server to test on");
    const name = `gleed_test_${process.pid}_${++databases}`;
    await administer(server, `create database ${name}`);
    const url = new URL(server);
    url.pathname = `/${name}`;
    return { location: url.href, remove: () => administer(server as string, `drop database if exists ${name} with (force)`) };
  },
};

async function administer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
