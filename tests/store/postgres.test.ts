/** What only the server store has to stand: no server, a silent one, broken connections, several workers. */
import { createServer, type Server } from "node:net";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import pg from "pg";
import type { Store } from "../../src/records/ports.ts";
import { StoreBusy, StoreUnreachable } from "../../src/store/errors.ts";
import { openEngine, openStore, storeOn } from "../../src/store/open.ts";
import { type Location, POSTGRES } from "./locations.ts";
import { dueOf, heaterOf, MINUTE, NOW, say, saying, snapshotOf, writeHeater } from "./made.ts";

describe("no server", () => {
  test("that listens is unreachable at once", async () => {
    await expect(openStore("postgres://gleed@127.0.0.1:1/gleed")).rejects.toThrow(StoreUnreachable);
  });

  test("that answers is given up after some seconds, and nothing else waits for it", { timeout: 30_000 }, async () => {
    const silent: Server = createServer(() => {}).listen(0, "127.0.0.1");
    await new Promise((resolve) => silent.once("listening", resolve));
    const { port } = silent.address() as { port: number };
    let beats = 0;
    const beat = setInterval(() => beats++, 10);
    await expect(openStore(`postgres://gleed@127.0.0.1:${port}/gleed`)).rejects.toThrow(/busy|reached/);
    clearInterval(beat);
    expect(beats).toBeGreaterThan(100);
    silent.close();
  });
});

const run = POSTGRES.missing ? describe.skip : describe;
run(`PostgreSQL${POSTGRES.missing ? ` (${POSTGRES.missing})` : ""} with several workers`, () => {
  let at: Location;
  let stores: [Store, Store, ...Store[]];
  beforeEach(async () => {
    at = await POSTGRES.fresh();
    stores = [await openStore(at.location), await openStore(at.location)];
  });
  afterEach(async () => {
    for (const store of stores) await store.close();
    await at.remove();
  });

  test("five that start at once bring the tables up to date once", async () => {
    const fresh = await POSTGRES.fresh();
    const five = await Promise.all(Array.from({ length: 5 }, () => openStore(fresh.location)));
    for (const store of five) expect((await snapshotOf(store, "ana")).talk.version).toBe(0);
    for (const store of five) await store.close();
    await fresh.remove();
  });

  test("each row is claimed by one of them", async () => {
    await say(stores[0], "ana", (s) => ({ due: Array.from({ length: 200 }, (_, n) => dueOf(s, `${n}`, NOW)) }));
    const claims = await Promise.all(Array.from({ length: 40 }, (_, n) => stores[n % 2 ? 1 : 0].claimDue(NOW, MINUTE, 10)));
    const keys = claims.flat().map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    const rest = await stores[0].claimDue(NOW, MINUTE, 1000);
    expect(keys.length + rest.length).toBe(200);
  });

  test("a lease ends by the server's clock, though ours stands still", async () => {
    await say(stores[0], "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
    expect(await stores[0].claimDue(NOW, 300, 10)).toHaveLength(1);
    expect(await stores[1].claimDue(NOW, 300, 10)).toEqual([]);
    await new Promise((resolve) => setTimeout(resolve, 350));
    expect(await stores[1].claimDue(NOW, 300, 10)).toHaveLength(1);
  });

  test("connections that the server ends are replaced", async () => {
    const before = await snapshotOf(stores[0], "ana");
    const client = new pg.Client({ connectionString: at.location });
    await client.connect();
    await client.query(
      "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()",
    );
    await client.end();
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(await snapshotOf(stores[0], "ana")).toEqual(before);
  });

  test("a table somebody has locked is busy after some seconds", { timeout: 40_000 }, async () => {
    const client = new pg.Client({ connectionString: at.location });
    await client.connect();
    await client.query("begin; lock table people in access exclusive mode");
    await expect(snapshotOf(stores[0], "ana")).rejects.toThrow(StoreBusy);
    await client.query("rollback");
    await client.end();
    expect((await snapshotOf(stores[0], "ana")).talk.version).toBe(0);
  });

  test("after forgetting, no table holds a word of a person; after a full vacuum, no file of a table does", { timeout: 60_000 }, async () => {
    const MARK = "zq7-unmistakable";
    for (const person of ["ana", "ben"]) {
      const words = `${MARK} ${person} `;
      for (let day = 0; day < 5; day++)
        await say(stores[0], person, (s) => ({
          answer: saying(words.repeat(20)),
          writes: [
            writeHeater(heaterOf(s, { facts: { name: words } })),
            { write: "talk", state: { words: words.repeat(30) } },
            { write: "reminder", reminder: { id: `${person} ${day}`, person_id: s.person.id, place_id: s.place.id, what: words, due_at_ms: NOW } },
          ],
          due: [dueOf(s, `${person}-${day}`, NOW + day, { payload: { words } })],
          also_tell: [{ key: `${person}/${day}`, person_id: s.person.id, place_id: s.place.id, answer: saying(words) }],
        }));
    }
    const client = new pg.Client({ connectionString: at.location });
    await client.connect();
    const tables = (await client.query<{ name: string }>("select table_name as name from information_schema.tables where table_schema = 'public'")).rows;
    const logically = async (words: string): Promise<string[]> => {
      const found: string[] = [];
      for (const { name } of tables) {
        const { rows } = await client.query(`select 1 from "${name}" as row where row::text like $1 limit 1`, [`%${words}%`]);
        if (rows.length > 0) found.push(name);
      }
      return found;
    };
    const inFiles = async (words: string): Promise<string[]> => {
      await client.query("checkpoint");
      const files = await client.query<{ name: string; bytes: Buffer }>(
        `select relname as name, pg_read_binary_file(pg_relation_filepath(oid)) as bytes from pg_class
         where relkind in ('r', 'i', 't') and relnamespace in ('public'::regnamespace, 'pg_toast'::regnamespace) and pg_relation_filepath(oid) is not null`,
      );
      return files.rows.filter(({ bytes }) => bytes.includes(words)).map(({ name }) => name);
    };
    expect((await logically(`${MARK} ana`)).length).toBeGreaterThan(4);
    expect((await inFiles(`${MARK} ana`)).length).toBeGreaterThan(3);
    const { person } = await snapshotOf(stores[0], "ana");
    await say(stores[0], "ben", () => ({ writes: [{ write: "forget-person", person_id: person.id }] }));
    expect(await logically(`${MARK} ana`)).toEqual([]);
    expect(await logically("ana")).toEqual([]);
    await client.query("vacuum full");
    expect(await inFiles(`${MARK} ana`)).toEqual([]);
    expect((await inFiles(`${MARK} ben`)).length).toBeGreaterThan(3);
    await client.end();
  });

  test("a claim from a table that has just grown goes by its index, and neither sorts nor gathers what it does not take", async () => {
    const engine = await openEngine(at.location);
    const ana = await say(storeOn(engine), "ana", () => ({}));
    await sql`analyze due`.execute(engine.db);
    await sql`insert into due (key, kind, due_at_ms, again_at_ms, useful_until_ms, person_id, place_id, attempts, doc)
      select 'k' || i, 'reminder', i, i, i, ${ana.person.id}, ${ana.place.id}, 0, '{}' from generate_series(1, 3000) i`.execute(engine.db);
    const asked = sql<Record<"QUERY PLAN", string>>`explain select key from due where again_at_ms <= ${NOW} and lease is null order by again_at_ms limit 50 for update skip locked`;
    const planOf = async (rows: Promise<{ rows: Record<"QUERY PLAN", string>[] }>) => (await rows).rows.map((row) => row["QUERY PLAN"]).join("\n");
    const plan = await engine.claim((db) => planOf(asked.execute(db)));
    expect(plan).toContain("Index Scan using due_again");
    expect(plan).not.toMatch(/Sort|Bitmap/);
    await engine.close();
  });
});
