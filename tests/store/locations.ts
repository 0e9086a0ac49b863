/** Where tests keep a store: a file, memory, or a database of its own on the server named by GLEED_TEST_POSTGRES. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { afterAll } from "vitest";

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

/** databases of this test file that are free to be used again: emptying one is much quicker than making one */
const spare: string[] = [];
let databases = 0;
export const POSTGRES: Kind = {
  name: "PostgreSQL",
  ...(server ? {} : { missing: "GLEED_TEST_POSTGRES names no server (tests/servers/postgres.sh starts one)" }),
  async fresh() {
    if (!server) throw new Error("no PostgreSQL server to test on");
    const name = spare.pop() ?? (await made(server));
    const url = new URL(server);
    url.pathname = `/${name}`;
    return {
      location: url.href,
      async remove() {
        await administer(url.href, "drop schema public cascade; create schema public");
        spare.push(name);
      },
    };
  },
};
async function made(url: string): Promise<string> {
  const name = `gleed_test_${process.pid}_${++databases}`;
  await administer(url, `create database ${name}`);
  return name;
}
afterAll(async () => {
  for (const name of spare.splice(0)) await administer(server ?? "", `drop database if exists ${name} with (force)`);
});

async function administer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
