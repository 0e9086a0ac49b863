/** The group on Discord: what is whispered and what everybody sees, a card pressed by others, withdrawn where it stood. */
import { afterEach, expect, test } from "vitest";
import { ids, type Json, press, slash } from "../../servers/discord/events.ts";
import { until } from "../../servers/discord/index.ts";
import { type Bot, button, components, startBot, words } from "./bot.ts";

const ana = { user: "700000000000000001" };
const bea = { user: "700000000000000002" };
const G = { guild: ids.guild };
const open: Bot[] = [];
afterEach(async () => {
  for (const bot of open.splice(0)) {
    await bot.close();
    expect(bot.server.problems).toEqual([]);
  }
});
async function start(): Promise<Bot> {
  const bot = await startBot();
  open.push(bot);
  for (const [who, max_load_kg] of [[ana, 14], [bea, 9]] as const) await bot.records(who.user, { heater: { max_load_kg, max_load_source: "sheet" } });
  return bot;
}
const seenByAll = (bot: Bot, words_in: RegExp): Json[] => [...bot.server.messages.values()].filter((one) => one.channel_id === ids.channel && ((one.flags ?? 0) & 64) === 0 && words_in.test(words(one)));

test("a command of the group's is answered to whoever gave it alone, and makes them a member", async () => {
  const bot = await start();
  const { message } = await bot.ask(slash("group", { what: "who has the meter?" }, { ...ana, ...G }));
  expect(words(message)).toMatch(/Nobody has told me/);
  expect((message?.flags ?? 0) & 64).toBe(64);
  const refused = await bot.ask(slash("group", { what: "sweep day on 5 December" }, { ...ana, ...G }));
  expect(words(refused.message)).toMatch(/Only a moderator/);
  const set = await bot.ask(slash("group", { what: "sweep day on 5 December" }, { ...ana, ...G, moderator: true }));
  expect(words(set.message)).toMatch(/5 Dec 2026/);
  await bot.advance("PT0S");
  const [said] = await until("the day to be said", () => (seenByAll(bot, /Sweep day: 5 Dec 2026/).length > 0 ? seenByAll(bot, /Sweep day: 5 Dec 2026/) : null));
  const joined = await bot.ask(press(button(said ?? null, "Put me on the list").custom_id, said ?? {}, { ...bea, ...G }));
  expect(words(joined.message)).toMatch(/on the list for 5 Dec/);
  expect((joined.message?.flags ?? 0) & 64).toBe(64);
});

test("shared from a direct message by a press, run by somebody else unseen, withdrawn where it stood", async () => {
  const bot = await start();
  for (const who of [ana, bea]) await bot.ask(slash("group", {}, { ...who, ...G }));
  const asked = (await bot.ask(slash("ask", { question: "how much wood in one load?" }, ana))).message ?? {};
  expect(seenByAll(bot, /on my heater/)).toEqual([]);
  const done = (await bot.ask(press(button(asked, "Share with the group").custom_id, asked, ana))).message ?? {};
  const code = /\b[A-Z]\d[A-Z]\d\b/.exec(words(done))?.[0] ?? "none";
  await bot.advance("PT0S");
  const [card] = await until("the card", () => (seenByAll(bot, new RegExp(`${code}: `)).length > 0 ? seenByAll(bot, new RegExp(`${code}: `)) : null));
  expect(words(card ?? null)).not.toMatch(/user001/);
  const mine = await bot.ask(press(button(card ?? null, `${code} on my heater`).custom_id, card ?? {}, { ...bea, ...G }));
  const shown = [mine.message, ...mine.followUps];
  expect(shown.map((one) => words(one)).join("\n")).toMatch(new RegExp(`${code} on your heater`));
  expect(shown.every((one) => ((one?.flags ?? 0) & 64) === 64)).toBe(true);
  // the card itself is not changed by somebody's press
  expect(words(bot.server.messages.get(card?.id) ?? null)).toMatch(new RegExp(`${code}: `));
  await bot.ask(press(button(done, `Withdraw ${code}`).custom_id, done, ana));
  await bot.advance("PT0S");
  await until("the card to go", () => !bot.server.messages.has(card?.id));
  expect(seenByAll(bot, new RegExp(code)).map((one) => words(one))).toEqual([expect.stringMatching(/was withdrawn/)]);
  expect(components(seenByAll(bot, new RegExp(code))[0] ?? null).filter((one) => one.type === 2)).toEqual([]);
});
