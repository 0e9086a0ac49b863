/** A homeserver that is down, broken or says that it is too much: nothing is lost, nothing answered twice. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { clearFolders, type Gleed, gleed, newFolder, sleep } from "./support/host.ts";
import { type Account, HOMESERVER, isNotice, type Person, person, register } from "./support/people.ts";
import { type Mood, type Proxy, proxy } from "./support/proxy.ts";

const DOWN_MS = Number(process.env.GLEED_TEST_MATRIX_DOWN_S ?? 20) * 1_000;

describe.skipIf(!HOMESERVER)("a homeserver in trouble (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 60_000 + 2 * DOWN_MS }, () => {
  let bot: Account;
  let between: Proxy;
  let folder: string;
  let host: Gleed;
  let ana: Person;
  let room: string;

  beforeAll(async () => {
    bot = await register("gleed");
    between = await proxy(HOMESERVER);
    folder = newFolder();
    host = gleed(bot, { folder, homeserver: between.url, budget: { most: 1_000, in_ms: 60_000 } });
    [ana] = await Promise.all([person(await register("ana")), host.ready]);
    room = await ana.do("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
  }, 60_000);
  afterAll(async () => {
    if (between) between.mood = "pass";
    ana?.leave();
    await host?.stop();
    between?.close();
    clearFolders();
  });

  async function through(mood: Mood, ms: number, name: string): Promise<void> {
    const from = ana.heard.length;
    between.mood = mood;
    const count = Math.min(20, Math.round(ms / 500));
    for (let n = 0; n < count; n++) {
      await ana.say(room, `${name} ${n}`);
      await sleep(ms / count);
    }
    if (mood !== "down") expect(between.count).toBeGreaterThan(3);
    between.mood = "pass";
    const all = Array.from({ length: count }, (_, n) => `echo ${name} ${n} private`);
    const got = (): string[] => ana.heard.slice(from).filter(isNotice).map(({ content }) => /^echo \w+ \d+ private/.exec(content.body ?? "")?.[0] ?? "");
    for (let waits = 0; waits < 160 && got().length < count; waits++) await sleep(250);
    await sleep(1_000);
    expect(got().sort()).toEqual(all.sort());
  }

  test("down", () => through("down", DOWN_MS, "down"));
  test("answers 5xx to every other request", () => through("broken", 6_000, "broken"));
  test("says that it is too much to every other request", () => through("limited", 6_000, "limited"));
  test("down while Gleed starts", async () => {
    await host.stop();
    between.mood = "down";
    host = gleed(bot, { folder, homeserver: between.url });
    await ana.say(room, "at the start");
    await sleep(3_000);
    const from = ana.heard.length;
    between.mood = "pass";
    await host.ready;
    await ana.hears(({ content }) => /^echo at the start/.test(content.body ?? ""), { from });
  });
});
