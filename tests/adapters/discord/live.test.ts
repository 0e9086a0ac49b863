/** The live fire guide: one card, changed where it stands; in a server in a thread of its own; asked again by a new card at the end. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { APP_BITS, ids, type Json, press, slash, written } from "../../servers/discord/events.ts";
import { standIn, until } from "../../servers/discord/index.ts";
import { type Bot, type BotOptions, button, components, startBot, words } from "./bot.ts";

const G = { guild: ids.guild };
const ana = { user: "700000000000000001" };
const bea = { user: "700000000000000002" };
const open: Bot[] = [];
async function start(options?: BotOptions): Promise<Bot> {
  const bot = await startBot(options);
  open.push(bot);
  return bot;
}
afterEach(async () => {
  for (const bot of open.splice(0)) {
    await bot.close();
    expect(bot.server.problems).toEqual([]);
  }
});

const cardsIn = (bot: Bot, channel: string): Json[] => [...bot.server.messages.values()].filter((one) => one.channel_id === channel && components(one).some((part) => part.type === 2));
const known = (bot: Bot, { user }: Json): Promise<void> => bot.records(user, { heater: { kind: "bell", max_load_kg: 14, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true } });

test("in direct messages: a press changes the card, a check-in moves it to the end, and there is always one", async () => {
  const bot = await start();
  await known(bot, ana);
  const first = (await bot.ask(slash("fire", {}, ana))).message ?? {};
  const lit = button(first, /lit/i);
  const before = words(first);
  const pressed = await bot.ask(press(lit.custom_id, first, ana));
  expect(pressed.acks.map((one) => one.type)).toEqual([7]);
  expect(words(bot.server.messages.get(first.id) ?? null)).not.toBe(before);
  await bot.advance("PT1H");
  const channel = first.channel_id;
  await until("the card to move", () => !bot.server.messages.has(first.id));
  const [card] = cardsIn(bot, channel).slice(-1);
  expect(words(card ?? null)).toMatch(/\?/);
  expect(cardsIn(bot, channel).filter((one) => /guide:/.test(JSON.stringify(one)))).toHaveLength(1);
  expect(String(card?.nonce).length).toBeLessThanOrEqual(25);
});

test("in a server: the answer points to its own thread, which holds the card; a check-in stays in it; others may press", async () => {
  const bot = await start();
  await known(bot, { ...ana, ...G });
  const { message } = await bot.ask(slash("fire", { load: "10" }, { ...ana, ...G }));
  expect(words(message)).toMatch(/thread/);
  expect((message?.flags ?? 0) & 64).toBe(0);
  const thread = message?.id ?? "";
  const [card] = await until("the card in the thread", () => (cardsIn(bot, thread).length > 0 ? cardsIn(bot, thread) : null));
  expect(bot.server.requests.filter((one) => one.path.endsWith("/threads"))).toHaveLength(1);
  await bot.ask(press(button(card ?? null, /lit/i).custom_id, card ?? {}, { ...ana, ...G, channel_type: 11 }));
  await bot.advance("PT1H");
  await until("the card to move", () => !bot.server.messages.has(card?.id));
  const [next] = cardsIn(bot, thread);
  const other = await bot.ask(press(components(next ?? null).find((one) => one.type === 2)?.custom_id, next ?? {}, { ...bea, ...G, channel_type: 11 }));
  expect(words(other.message).length).toBeGreaterThan(20);
  const again = await bot.ask(slash("fire", {}, { ...ana, ...G }));
  expect(words(again.message)).toMatch(/Followed here/);
});

test("without the right to open threads the card stands in the channel and says what is missing", async () => {
  const bot = await start();
  await known(bot, { ...ana, ...G });
  const bits = String(BigInt(APP_BITS) & ~(1n << 35n));
  const one = await bot.ask(slash("fire", { load: "10" }, { ...ana, ...G, app_bits: bits }));
  const posted = [one.message, ...one.followUps];
  await until("the remark", () => one.followUps.length > 0 || /Create Public Threads/.test(posted.map((message) => words(message)).join()));
  expect([one.message, ...one.followUps].map((message) => words(message)).join("\n")).toMatch(/Create Public Threads/);
});

test("a check-in whose thread is closed comes to the channel the group agreed on, and the log says why", async () => {
  const bot = await start();
  await bot.ask(slash("notices", {}, { ...ana, ...G, channel: "900000000000000250", moderator: true }));
  await known(bot, { ...ana, ...G });
  const { message } = await bot.ask(slash("fire", { load: "10" }, { ...ana, ...G }));
  const thread = message?.id ?? "";
  const [card] = await until("the card in the thread", () => (cardsIn(bot, thread).length > 0 ? cardsIn(bot, thread) : null));
  await bot.ask(press(button(card ?? null, /lit/i).custom_id, card ?? {}, { ...ana, ...G, channel_type: 11 }));
  bot.server.closedChannels.add(thread);
  await bot.advance("PT1H");
  expect(cardsIn(bot, "900000000000000250")).toHaveLength(1);
  expect(bot.logged.some((one) => one.level === "warn" && /closed to me/.test(one.words))).toBe(true);
});

test("a private check-in with direct messages closed comes to the agreed channel, named and calling nobody", async () => {
  const bot = await start();
  await bot.ask(slash("notices", {}, { ...ana, ...G, channel: "900000000000000250", moderator: true }));
  await known(bot, { ...ana, ...G });
  const first = (await bot.ask(slash("fire", {}, ana))).message ?? {};
  await bot.ask(press(button(first, /lit/i).custom_id, first, ana));
  bot.server.closedDirect.add(first.channel_id);
  await bot.advance("PT1H");
  const posted = [...bot.server.messages.values()].filter((one) => one.channel_id === "900000000000000250");
  expect(JSON.stringify(posted)).toContain(`<@${ana.user}>`);
  expect(bot.server.requests.filter((one) => one.body?.allowed_mentions).every((one) => JSON.stringify(one.body.allowed_mentions) === '{"parse":[]}')).toBe(true);
});

test("asked alone in a server, the guide goes on in direct messages", async () => {
  const bot = await start();
  await known(bot, { ...ana, ...G });
  const { message } = await bot.ask(slash("ask", { question: "walk me through a fire" }, { ...ana, ...G }));
  expect(words(message)).toMatch(/direct messages/);
  expect(cardsIn(bot, `8${ana.user.slice(1)}`)).toHaveLength(1);
});

test("typed words move the guide too, and the card is at the end again", async () => {
  const bot = await start();
  await known(bot, ana);
  const first = (await bot.ask(slash("fire", {}, ana))).message ?? {};
  const [card] = await bot.say(written("it is lit", ana));
  await until("the old card to go", () => !bot.server.messages.has(first.id));
  expect(cardsIn(bot, first.channel_id).map((one) => one.id)).toContain(card?.id);
});

test("a restart between button shown and pressed: card, choices and form work as before, commands are not given again", async () => {
  const folder = mkdtempSync(join(tmpdir(), "gleed-discord-"));
  const server = await standIn();
  const options = { server, database: join(folder, "gleed.sqlite"), discord: { memory: join(folder, "discord.sqlite") } };
  const before = await startBot(options);
  await known(before, ana);
  const card = (await before.ask(slash("fire", {}, ana))).message ?? {};
  const question = (await before.ask(slash("ask", { question: "why is my glass black?" }, { ...bea, ...G }))).message ?? {};
  const form = (await before.ask(slash("log", {}, { ...bea, ...G }))).message ?? {};
  await before.close();
  const after = await startBot(options);
  try {
    const pressed = await after.ask(press(button(card, /lit/i).custom_id, card, ana));
    expect(pressed.acks.map((one) => one.type)).toEqual([7]);
    const choice = components(question).find((one) => /^v1:is:\d+:sign/.test(one.custom_id ?? ""));
    expect(words((await after.ask(press(choice?.custom_id, question, { ...bea, ...G }))).message)).not.toMatch(/too old/);
    expect((await after.ask(press(button(form, /Fill in/).custom_id, form, { ...bea, ...G }))).acks[0]?.type).toBe(9);
    expect(server.requests.filter((one) => one.method === "PUT")).toHaveLength(1);
    expect(server.problems).toEqual([]);
  } finally {
    await after.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
});
