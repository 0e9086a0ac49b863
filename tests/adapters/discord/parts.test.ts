/** The adapter's small parts, each by itself. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DiscordAPIError, HTTPError } from "discord.js";
import { describe, expect, test } from "vitest";
import { openMemory } from "../../../adapters/discord/memory.ts";
import { asked, said, wordsOf } from "../../../adapters/discord/parse.ts";
import { recent } from "../../../adapters/discord/recent.ts";
import { failureOf, reason, sentOf } from "../../../adapters/discord/requests.ts";
import { suggestions } from "../../../adapters/discord/suggest.ts";
import { readSettings } from "../../../src/settings.ts";
import { ids, type Json, press, slash, written } from "../../servers/discord/events.ts";

const refusal = (status: number, code: number): DiscordAPIError => new DiscordAPIError({ code, message: "no" }, code, status, "POST", "https://x/webhooks/1/secret-token/callback", { body: {}, files: [] });
const ana = { user: "700000000000000001" };

describe("what became of a request", () => {
  test.each([
    [refusal(404, 10062), "too-late"], [refusal(400, 40060), "already"], [refusal(401, 50027), "expired"], [refusal(403, 50007), "closed"], [refusal(403, 50013), "forbidden"],
    [refusal(404, 10003), "gone"], [refusal(401, 0), "unauthorized"], [refusal(400, 50035), "invalid"], [new HTTPError(503, "x", "POST", "https://x", {}), "passing"],
    [Object.assign(new Error("cut"), { code: "UND_ERR_SOCKET" }), "passing"], [new Error("Expected token to be set for this request, but none was present"), "unauthorized"],
  ])("%s is %s", (error, expected) => expect(failureOf(error)).toBe(expected));

  test("never says a token, and a passing trouble is worth another try", () => {
    expect(reason(refusal(404, 10062))).not.toContain("secret");
    expect(sentOf(refusal(403, 50007))).toMatchObject({ sent: false, retry: false });
    expect(sentOf(new HTTPError(500, "x", "POST", "https://x", {}))).toMatchObject({ sent: false, retry: true });
    expect(sentOf(refusal(401, 0))).toMatchObject({ sent: false, retry: true });
  });
});

describe("who asks, and where", () => {
  const of = (raw: Json) => asked(raw as never);
  test("a server the app is a member of, one where a person brought it along, a direct message", () => {
    expect(of(slash("help", {}, { ...ana, guild: ids.guild }))).toMatchObject({ guild: ids.guild, alone: false, moderates: false });
    expect(of(slash("help", {}, { ...ana, guild: ids.guild, user_install: true }))).toMatchObject({ guild: null });
    expect(of(slash("help", {}, ana))).toMatchObject({ guild: null, alone: true });
    expect(of(slash("help", {}, { ...ana, guild: ids.guild, moderator: true }))?.moderates).toBe(true);
    expect(of(press("x", { id: "1", channel_id: "2", flags: 64 }, { ...ana, guild: ids.guild }))?.alone).toBe(true);
  });
  test("messages of bots, webhooks, oneself and those that name nobody are not for Gleed", () => {
    const named = written(`<@${ids.bot}>  hello <@!${ids.bot}>`, { ...ana, guild: ids.guild });
    expect(said(named as never, ids.bot, 0)?.text).toBe("hello");
    for (const change of [{ author: { ...named.author, bot: true } }, { webhook_id: "1" }, { mentions: [] }, { type: 7 }]) expect(said({ ...named, ...change } as never, ids.bot, 0)).toBeNull();
    expect(wordsOf({ content: "a\nb  c" }, ids.bot)).toBe("a\nb c");
  });
});

test("suggestions: what begins with the words first, none rather than late, fresh after the person said something", async () => {
  let asks = 0;
  const lists = { pile: ["South wall", "By the door", "south of the barn", "", "x".repeat(150)] };
  const names = async () => {
    asks += 1;
    return lists;
  };
  const some = suggestions({ names }, () => 0);
  const who = { identity: { network: "discord", id: "1" }, place: { network: "discord", id: "@1", kind: "private", encrypted: null } } as const;
  expect((await some.for(who, "pile", "south")).map((one) => one.value)).toEqual(["South wall", "south of the barn"]);
  expect((await some.for(who, "pile", "")).every((one) => one.name.length <= 100 && one.value.length >= 1)).toBe(true);
  expect([await some.for(who, "none", ""), asks]).toEqual([[], 1]);
  some.forget("1");
  await some.for(who, "pile", "");
  expect(asks).toBe(2);
  const slow = suggestions({ names: () => new Promise(() => {}) }, () => 0);
  expect(await slow.for(who, "pile", "")).toEqual([]);
  const broken = suggestions({ names: () => Promise.reject(new Error("no records")) }, () => 0);
  expect(await broken.for(who, "pile", "")).toEqual([]);
});

test("the memory outlasts a restart, and lets go of old cards only", () => {
  const folder = mkdtempSync(join(tmpdir(), "gleed-memory-"));
  const file = join(folder, "deep", "discord.sqlite");
  const first = openMemory(file, 0);
  first.set("live:a", { channel: "1" });
  first.set("notices:g", "7");
  first.forget("absent");
  first.close();
  const second = openMemory(file, Date.now());
  expect([second.get("live:a"), second.get("notices:g"), second.get("absent")]).toEqual([{ channel: "1" }, "7", null]);
  second.close();
  const third = openMemory(file, Date.now() + 61 * 86_400_000);
  expect([third.get("live:a"), third.get("notices:g")]).toEqual([null, "7"]);
  third.close();
  rmSync(folder, { recursive: true });
});

test("events seen before are known among the latest", () => {
  const isNew = recent(2);
  expect([isNew("a"), isNew("a"), isNew("b"), isNew("c"), isNew("a")]).toEqual([true, false, true, true, true]);
});

describe("settings", () => {
  test("off without a token; the token from the environment or a file, never printed", () => {
    expect(readSettings({}, ":memory:").discord).toBeUndefined();
    const folder = mkdtempSync(join(tmpdir(), "gleed-token-"));
    writeFileSync(join(folder, "token"), "abc.def.ghi\n");
    writeFileSync(join(folder, "two"), "abc def");
    for (const env of [{ GLEED_DISCORD_TOKEN: "abc.def.ghi" }, { GLEED_DISCORD_TOKEN_FILE: join(folder, "token") }]) {
      const { discord } = readSettings(env, ":memory:");
      expect(discord?.token.reveal()).toBe("abc.def.ghi");
      expect(JSON.stringify(discord)).not.toContain("abc");
    }
    expect(() => readSettings({ GLEED_DISCORD_TOKEN_FILE: join(folder, "two") }, ":memory:")).toThrow(/more than one word/);
    expect(() => readSettings({ GLEED_DISCORD_TOKEN_FILE: join(folder, "none") }, ":memory:")).toThrow(/cannot be read/);
    rmSync(folder, { recursive: true });
  });
  test("another address of the API: https, or this machine itself", () => {
    const at = (GLEED_DISCORD_API: string) => readSettings({ GLEED_DISCORD_TOKEN: "x", GLEED_DISCORD_API }, ":memory:").discord?.api;
    expect([at("http://127.0.0.1:9/api/"), at("http://localhost:9/api"), at("https://example.org/api")]).toEqual(["http://127.0.0.1:9/api", "http://localhost:9/api", "https://example.org/api"]);
    for (const bad of ["http://example.org/api", "http://127.0.0.1.example.org/api", "ftp://127.0.0.1/", "nonsense"]) expect(() => at(bad)).toThrow(/https/);
  });
  test("development server and HTTP interactions", () => {
    const { discord } = readSettings({ GLEED_DISCORD_TOKEN: "x", GLEED_DISCORD_GUILD: "900000000000000100", GLEED_DISCORD_PUBLIC_KEY: "ab".repeat(32) }, ":memory:");
    expect(discord).toMatchObject({ guild: "900000000000000100", http: { public_key: "ab".repeat(32), port: 8787 } });
    expect(() => readSettings({ GLEED_DISCORD_TOKEN: "x", GLEED_DISCORD_PUBLIC_KEY: "ab" }, ":memory:")).toThrow(/hexadecimal/);
  });
});
