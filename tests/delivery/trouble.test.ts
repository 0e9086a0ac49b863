/**
 * What befalls a machine: its disk fills up, its database is locked or damaged, its clock goes back, its network is gone for two days. Each time
 * a line in the log says what is wrong, without a word of a message, and nothing is lost once it is mended.
 */
import { readFileSync, writeFileSync } from "node:fs";
import Database from "better-sqlite3";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { systemClock } from "../../src/delivery/clock.ts";
import { type DeliverDeps, deliver, nextDelivery } from "../../src/delivery/deliver.ts";
import { startTicker, type Ticker } from "../../src/delivery/ticker.ts";
import { backup, restore } from "../../src/hosting/backup.ts";
import type { Clock } from "../../src/records/ports.ts";
import type { Engine } from "../../src/store/engine.ts";
import { openEngine, storeOn } from "../../src/store/open.ts";
import { FILE, type Location } from "../store/locations.ts";
import { DAY, decided, dueOf, HOUR, MINUTE, NOW, say, saying } from "../store/made.ts";
import { type Line, listeningLog } from "./stand-ins.ts";

const WORDS = "zq7 sweep the flue";
let at: Location;
let engine: Engine;
let posts: string[];
let lines: Line[];
let ticker: Ticker | undefined;
beforeEach(async () => {
  at = await FILE.fresh();
  engine = await openEngine(at.location);
  posts = [];
});
afterEach(async () => {
  await ticker?.stop();
  ticker = undefined;
  await engine.close();
  await at.remove();
});

let network_up = true;
function deps(clock: Clock): DeliverDeps {
  const log = listeningLog();
  lines = log.lines;
  return {
    store: storeOn(engine), clock, log, random: () => 0.5, windows_ms: { lines: MINUTE }, reader: { locale: "en", system: "metric", timezone: "UTC" },
    decideDue: (_snapshot, row) => decided({ answer: saying(`${WORDS} ${"again ".repeat(4_000)}${row.key}`) }),
    outlets: [
      {
        network: "lines",
        async send({ key }) {
          if (!network_up) return { sent: false, retry: true, why: "the network is down" };
          posts.push(key);
          return { sent: true, native_id: null };
        },
      },
    ],
  };
}
const standing = (now_ms = NOW): Clock => ({ now: () => now_ms, monotonic: () => performance.now() });
const plant = (due_at_ms = NOW) => say(storeOn(engine), "ana", (s) => ({ due: [dueOf(s, "k", due_at_ms, { useful_until_ms: due_at_ms + 7 * DAY })] }));
function ticking(clock: Clock): void {
  const given = deps(clock);
  ticker = startTicker({ tick: () => deliver(given), next: () => nextDelivery(given), clock, log: given.log });
}
const until = async (met: () => boolean): Promise<void> => {
  for (let i = 0; i < 500 && !met(); i++) await new Promise((wait) => setTimeout(wait, 20));
  expect(met()).toBe(true);
};
const failure = (): Line | undefined => lines.find(({ words }) => words === "delivery failed, next round within a minute");
const saysNothingOfIt = (): void => expect(JSON.stringify(lines)).not.toContain(WORDS);

describe("the log says what is wrong, and nothing is lost", () => {
  test("disk full", async () => {
    await plant();
    const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(engine.db);
    await sql.raw(`pragma max_page_count = ${rows[0]?.page_count}`).execute(engine.db);
    ticking(standing());
    await until(() => failure() !== undefined);
    expect(failure()).toMatchObject({ level: "error", data: { why: expect.stringContaining("the disk of the store is full") } });
    saysNothingOfIt();
    await sql`pragma max_page_count = 1000000`.execute(engine.db);
    ticker?.nudge();
    await new Promise((wait) => setTimeout(wait, 50));
    // what was claimed before the disk was full is taken up again when its lease has ended, or by the next start
    await ticker?.stop();
    await engine.close();
    engine = await openEngine(at.location);
    await deliver(deps(standing()));
    expect(posts).toEqual([`k@${NOW}`]);
  });

  test("database locked", { timeout: 30_000 }, async () => {
    await plant();
    const other = new Database(at.location);
    other.exec("begin immediate");
    ticking(standing());
    await until(() => failure() !== undefined);
    expect(failure()).toMatchObject({ level: "error", data: { why: expect.stringContaining("the store is busy") } });
    other.exec("commit");
    other.close();
    ticker?.nudge();
    await until(() => posts.length > 0);
    expect(posts).toEqual([`k@${NOW}`]);
    saysNothingOfIt();
  });

  test("corrupt page: named, and a copy brings everything back", async () => {
    await plant();
    const copy = `${at.location}.copy`;
    await backup(at.location, copy);
    await engine.close();
    const database = new Database(at.location, { readonly: true });
    const { rootpage } = database.prepare("select rootpage from sqlite_master where name = 'due'").get() as { rootpage: number };
    database.close();
    const bytes = readFileSync(at.location);
    bytes.fill(0xa5, (rootpage - 1) * 4096, rootpage * 4096);
    writeFileSync(at.location, bytes);
    engine = await openEngine(at.location);
    ticking(standing());
    await until(() => failure() !== undefined);
    expect(failure()).toMatchObject({ level: "error", data: { why: expect.stringMatching(/the store is broken: .*malformed/) } });
    expect(await engine.check("thorough")).toMatchObject({ ok: false });
    saysNothingOfIt();
    await ticker?.stop();
    await engine.close();
    await restore(copy, at.location);
    engine = await openEngine(at.location);
    await deliver(deps(standing()));
    expect(posts).toEqual([`k@${NOW}`]);
  });

  test("clock back an hour: said once, and a reminder comes once, not an hour late", async () => {
    const time = { true_ms: NOW, wall_ms: NOW };
    const told: number[] = [];
    const clock = systemClock(0, () => time.wall_ms, () => time.true_ms - NOW, (behind_ms) => told.push(behind_ms));
    await plant(NOW + 30 * MINUTE);
    const given = deps(clock);
    await deliver(given);
    time.wall_ms -= HOUR;
    const came: number[] = [];
    for (let minute = 0; minute < 240; minute++) {
      await deliver(given);
      if (posts.length > came.length) came.push(minute);
      time.true_ms += MINUTE;
      time.wall_ms += MINUTE;
    }
    expect(told).toEqual([HOUR]);
    expect(posts).toEqual([`k@${NOW + 30 * MINUTE}`]);
    // a tenth slower while the wall is behind: 30 minutes take 33
    expect(came[0]).toBeLessThanOrEqual(34);
  });

  test("network down for two days", async () => {
    let now_ms = NOW;
    await plant();
    const given = deps({ now: () => now_ms, monotonic: () => performance.now() });
    network_up = false;
    for (; now_ms < NOW + 2 * DAY; now_ms += HOUR) await deliver(given);
    network_up = true;
    expect(posts).toEqual([]);
    expect(lines[0]).toMatchObject({ level: "warn", words: "sending failed, will try again", data: { network: "lines", fate: "not sent", why: "the network is down" } });
    saysNothingOfIt();
    for (; now_ms < NOW + 2 * DAY + 6 * HOUR; now_ms += HOUR) await deliver(given);
    expect(posts).toEqual([`k@${NOW}`]);
  });
});
