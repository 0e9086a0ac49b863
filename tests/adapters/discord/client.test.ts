/** The real client against the stand-in: everything a person can do in Discord, each request checked by description and limits. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { APP_BITS, ids, type Json, onMessage, pick, press, slash, submit, typing, withPicture, written } from "../../servers/discord/events.ts";
import { until } from "../../servers/discord/index.ts";
import { PNG } from "../../servers/discord/rest.ts";
import { type Bot, button, components, startBot, words } from "./bot.ts";

const G = { guild: ids.guild };
const ana = { user: "700000000000000001" };
let bot: Bot;
const folder = mkdtempSync(join(tmpdir(), "gleed-discord-client-"));
const pictures: number[] = [];
/** tells a photograph of the album from a chart */
const PHOTO_BYTES = 40;
beforeAll(async () => {
  writeFileSync(join(folder, "chart.png"), PNG);
  bot = await startBot({
    discord: { draw: async ({ chart, data }) => (chart === "photo" ? { name: String(data.name), media_type: "image/png", bytes: new Uint8Array(PNG).subarray(0, PHOTO_BYTES) } : join(folder, "chart.png")) },
    core: (real) => ({
      ...real,
      receive(message) {
        if (message.picture) pictures.push(message.picture.bytes.length);
        return real.receive(message);
      },
    }),
  });
});
afterAll(async () => {
  await bot.close();
  rmSync(folder, { recursive: true });
  expect(bot.server.problems).toEqual([]);
});

const reply = async (interaction: Json): Promise<Json> => (await bot.ask(interaction)).message ?? {};
const isEphemeral = (message: Json): boolean => (message.flags & 64) !== 0;

test("logs in without a privileged intent, gives its commands once, and says nothing else", () => {
  // 1 guilds, 512 messages in servers, 4096 direct messages: none of them privileged (2, 256, 32768)
  expect(bot.server.gateway.identifies).toEqual([{ intents: 1 | 512 | 4096, shard: [0, 1] }]);
  const names = bot.server.commands.get("global")?.map((one) => one.name);
  expect(names).toEqual(["ask", "fire", "close", "load", "log", "fires", "wood", "heater", "house", "ban", "group", "notices", "help", "Ask Gleed about this"]);
  expect(bot.server.requests.filter((one) => one.method === "PUT")).toHaveLength(1);
  const byRights = bot.server.commands.get("global")?.filter((one) => one.default_member_permissions !== null).map((one) => [one.name, one.default_member_permissions, one.contexts]);
  expect(byRights).toEqual([["ban", "32", [0]], ["notices", "32", [0]]]);
});

test.each([
  ["ask", { question: "how much heat is in 12 kg of birch at 18 %?" }, /kWh/],
  ["close", {}, /damper/i],
  ["heater", { facts: "bell heater, 1800 kg, at most 15 kg" }, /15/],
  ["load", { low: "-7", species: "birch", moisture: "18" }, /kg/],
  ["log", { load: "11", species: "birch", moisture: "17", lit: "17:10" }, /11/],
  ["fires", {}, /fire/i],
  ["wood", { species: "birch", moisture: "18", volume: "4" }, /birch/i],
  ["house", {}, /house/i],
  ["help", {}, /wood/i],
])("/%s answers whoever asked, alone", async (name, options, expected) => {
  const message = await reply(slash(name, options, { ...ana, ...G }));
  expect(words(message)).toMatch(expected);
  expect(isEphemeral(message)).toBe(true);
});

test("a command without options opens the form, the form's page is filled in and kept", async () => {
  const message = await reply(slash("log", {}, { ...ana, ...G }));
  const opened = await bot.ask(press(button(message, /Fill in/).custom_id, message, { ...ana, ...G }));
  expect(opened.acks[0]?.type).toBe(9);
  const modal = opened.acks[0]?.data;
  const load = modal.components.find((one: Json) => /load/i.test(one.label)).component.custom_id;
  const kept = await reply(submit(modal.custom_id, { [load]: "9.5" }, message, { ...ana, ...G }));
  expect(words(kept)).toMatch(/9\.5/);
  expect(words(await reply(slash("fires", {}, { ...ana, ...G })))).toMatch(/9\.5/);
});

test("a button goes on with the talk; a select and an old or foreign button are answered too", async () => {
  const message = await reply(slash("ask", { question: "why is my glass black?" }, { ...ana, ...G }));
  const choice = components(message).find((one) => one.type === 2 && one.custom_id.startsWith("v1:is:"));
  const next = await reply(press(choice?.custom_id, message, { ...ana, ...G }));
  expect(words(next).length).toBeGreaterThan(50);
  expect(isEphemeral(next)).toBe(true);
  expect(words(await reply(pick("v1:pick:1.1", ["1:topic:help"], message, { ...ana, ...G })))).toMatch(/wood/i);
  for (const id of ["v0:gone", "v1:choose:123.4", "v1:form:123.100"]) expect(words(await reply(press(id, message, { ...ana, ...G })))).toMatch(/too old/);
});

test("what stands alone is shown to the channel by one press, whole and with its cautions, nothing to press for others", async () => {
  const asked = await bot.ask(slash("close", {}, { ...ana, ...G }));
  const message = asked.message ?? {};
  const before = new Set(bot.server.messages.keys());
  await bot.ask(press(button(message, "Show it in this channel").custom_id, message, { ...ana, ...G }));
  const shown = [...bot.server.messages.values()].filter((one) => !before.has(one.id) && !isEphemeral(one));
  const [first] = shown;
  expect(shown).toHaveLength(1);
  expect(words(first ?? null)).toMatch(/Caution/);
  expect(JSON.stringify(first)).toContain("shown by");
  expect(components(first ?? null).filter((one) => one.type === 2)).toEqual([]);
});

test("suggests kinds of wood, and the person's own woodpiles and heaters, never more than 25", async () => {
  const suggest = async (command: string, option: string, value: string) => (((await bot.ask(typing(command, option, value, { ...ana, ...G }))).acks[0]?.data.choices ?? []) as Json[]).map((one) => one.name);
  expect(await suggest("load", "species", "bir")).toContain("birch");
  expect((await suggest("load", "species", "")).length).toBeLessThanOrEqual(25);
  expect(await suggest("wood", "pile", "")).toBeInstanceOf(Array);
  expect(await suggest("load", "low", "-")).toEqual([]);
});

test("a chart is uploaded with its alt text after a sign of life, and only where files may be sent", async () => {
  const question = { question: "when is the heater warmest if I burn 12 kg at 18:00?" };
  const drawn = await bot.ask(slash("ask", question, { ...ana, ...G }));
  expect(drawn.acks[0]?.type).toBe(5);
  const upload = bot.server.requests.find((one) => one.path.includes(drawn.interaction.token) && one.method === "PATCH");
  expect(upload?.files).toEqual([{ name: expect.stringMatching(/\.png$/), type: "image/png", bytes: PNG.length }]);
  expect(upload?.body.attachments[0].description.length).toBeGreaterThan(20);
  const bits = String(BigInt(APP_BITS) & ~(1n << 15n));
  const bare = await bot.ask(slash("ask", question, { ...ana, ...G, app_bits: bits }));
  expect(bot.server.requests.filter((one) => one.path.includes(bare.interaction.token)).every((one) => one.files.length === 0)).toBe(true);
  expect(words(bare.message)).toMatch(/Picture: /);
});

test("a message command asks about what somebody else wrote", async () => {
  const target = written("my glass is black every morning", { user: "700000000000000009", ...G });
  expect(words(await reply(onMessage("Ask Gleed about this", target, { ...ana, ...G })))).toMatch(/glass/i);
});

test("direct messages and mentions are answered where they stand; nothing else in a server is", async () => {
  const [direct] = await bot.say(written("how much heat is in 10 kg of oak?", ana));
  expect(words(direct ?? null)).toMatch(/kWh/);
  const [named] = await bot.say(written(`<@${ids.bot}> how much heat is in 10 kg of oak?`, { ...ana, ...G }));
  expect(words(named ?? null)).toMatch(/kWh/);
  const posts = (): number => bot.server.requests.filter((one) => one.method === "POST" && /^\/channels\/\d+\/messages$/.test(one.path)).length;
  const before = posts();
  bot.server.gateway.dispatch("MESSAGE_CREATE", written("nobody asked you", { ...ana, ...G }));
  await bot.ask(slash("help", {}, { ...ana, ...G }));
  expect(posts()).toBe(before);
});

test("danger is answered at once, wherever it is written, even inside a form", async () => {
  const [alarm] = await bot.say(written("the CO alarm is going off", ana));
  expect(words(alarm ?? null)).toMatch(/out/i);
  expect(JSON.stringify(alarm?.components[0])).toContain('"type":17');
  expect(words(await reply(slash("ask", { question: "the CO alarm is beeping and we have headaches" }, { ...ana, ...G })))).toMatch(/out/i);
  const form = await reply(slash("house", {}, { ...ana, ...G }));
  const opened = await bot.ask(press(button(form, /Fill in/).custom_id, form, { ...ana, ...G }));
  const field = opened.acks[0]?.data.components[0].component.custom_id;
  expect(words(await reply(submit(opened.acks[0]?.data.custom_id, { [field]: "the co alarm is going off" }, form, { ...ana, ...G })))).toMatch(/out/i);
});

test("attachments are fetched from Discord's own hosts only, and a photo that does not come is answered all the same", async () => {
  const photo = { id: "930000000000000001", filename: "glass.png", size: 100, url: `${bot.server.api.replace("/api", "")}/attachments/1/2/glass.png`, proxy_url: "", content_type: "image/png" };
  await reply(withPicture("ask", { question: "why is my glass black?" }, photo, { ...ana, ...G }));
  expect(pictures).toEqual([PNG.length]);
  await reply(withPicture("ask", { question: "why is my glass black?" }, { ...photo, url: "https://example.org/glass.png" }, { ...ana, ...G }));
  expect(pictures).toHaveLength(1);
  const [direct] = await bot.say(written("my glass is black, see the picture", { ...ana, attachments: [photo] }));
  expect(words(direct ?? null)).toMatch(/glass/i);
  expect(pictures).toHaveLength(2);
});

test("the album comes back as attachments, to its owner alone; one press shows it to the channel", async () => {
  const asked = await bot.ask(slash("ask", { question: "show my album" }, { ...ana, ...G }));
  const message = asked.message ?? {};
  expect(isEphemeral(message)).toBe(true);
  const uploads = () => bot.server.requests.flatMap(({ files, path }) => files.filter(({ bytes }) => bytes === PHOTO_BYTES).map((file) => ({ ...file, path })));
  const alts = ["why is my glass black?", "my glass is black, see the picture"].map((asking) => expect.stringMatching(new RegExp(`^number \\d, the glass, .*Your words: "${asking.replace("?", "\\?")}"$`)));
  const sent = uploads();
  expect(sent).toMatchObject([{ type: "image/png", name: expect.stringMatching(/\.png$/) }, { type: "image/png" }]);
  expect(bot.server.requests.find(({ files }) => files.some(({ bytes }) => bytes === PHOTO_BYTES))?.body.attachments.map(({ description }: Json) => description)).toEqual(expect.arrayContaining(alts));
  await bot.ask(press(button(message, "Show it in this channel").custom_id, message, { ...ana, ...G }));
  expect(uploads()).toHaveLength(4);
  expect(uploads()[2]?.path).toMatch(/^\/channels\/\d+\/messages$/);
});

test("what only moderators may set follows Discord's rights; a member's press is told so", async () => {
  expect(words(await reply(slash("notices", {}, { ...ana, ...G })))).toMatch(/manage this server/);
  expect(words(await reply(slash("notices", {}, { ...ana, ...G, moderator: true })))).toMatch(/this channel/);
  const ban = await reply(slash("ban", { until: "Friday" }, { ...ana, ...G, moderator: true }));
  expect(isEphemeral(ban)).toBe(false);
  expect(words(ban)).toMatch(/fri/i);
  await reply(slash("ban", { lift: true }, { ...ana, ...G, moderator: true }));
});

test("brought along by a person, without being a member: answered alone, at most five further messages", async () => {
  const message = await reply(slash("fire", {}, { ...ana, guild: "900000000000000777", user_install: true }));
  expect(isEphemeral(message)).toBe(true);
});

test("the same event twice is answered once", async () => {
  const interaction = slash("help", {}, { ...ana, ...G });
  const one = await bot.ask(interaction);
  const session = bot.server.gateway.sessions.at(-1);
  if (session) bot.server.gateway.again(session, "INTERACTION_CREATE", interaction);
  const message = written("how much heat is in 10 kg of oak?", ana);
  const posted = await bot.say(message);
  if (session) bot.server.gateway.again(session, "MESSAGE_CREATE", message);
  await until("both repeats counted", () => bot.adapter.counts.duplicates >= 2);
  await new Promise((resolve) => setTimeout(resolve, 150));
  expect([one.acks.length, posted.length]).toEqual([1, 1]);
  // nothing in this file was acknowledged twice
  expect([...bot.server.tracked.values()].filter((each) => each.repeats > 0)).toEqual([]);
});
