/**
 * One group on three networks at once, each through its real adapter: a Matrix room on a homeserver, a Discord server (loopback stand-in),
 * a terminal. Shared on one, run "on my heater" on the others, withdrawn.
 */
import { PassThrough } from "node:stream";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { discord, type DiscordAdapter } from "../../adapters/discord/index.ts";
import { matrix, WINDOW_MS } from "../../adapters/matrix/index.ts";
import { terminal, type Terminal } from "../../adapters/terminal/index.ts";
import type { Adapter } from "../../adapters/adapter.ts";
import { type Core, openCore } from "../../src/core/core.ts";
import { silent } from "../../src/delivery/log.ts";
import { front } from "../../src/front.ts";
import { Secret } from "../../src/settings.ts";
import { type Reader, renderer, type Renderer } from "../../src/text/render.ts";
import { ids, type Json, press, slash } from "../servers/discord/events.ts";
import { type StandIn, standIn, TOKEN, until } from "../servers/discord/index.ts";
import { components, words } from "../adapters/discord/bot.ts";
import { clearFolders, newFolder, sleep } from "./support/host.ts";
import { type Account, HOMESERVER, isEdit, isNotice, type Person, person, register } from "./support/people.ts";

const reader: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
const NOW = Date.parse("2026-11-25T18:00:00Z");
const mod = { user: "700000000000000001", guild: ids.guild, moderator: true };
const bob = { user: "700000000000000002", guild: ids.guild };

const heater = (max_load_kg: number, heat_loss_W_per_K: number) => ({
  heater: { max_load_kg, max_load_source: "sheet", masonry_kg: 2000 }, house: { heat_loss_W_per_K, wanted_C: 21 }, wood: [{ species: "birch", moisture_pct_wet: 16 }], weather: { low_C: -12, high_C: -5 },
});

describe.skipIf(!HOMESERVER)("three networks (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 90_000 }, () => {
  let bot: Account;
  let ana: Person;
  let mia: Person;
  let room: string;
  let server: StandIn;
  let core: Core;
  let adapters: Adapter[];
  let console: Terminal;
  const stdin = new PassThrough();
  let shown = "";

  beforeAll(async () => {
    bot = await register("gleed");
    server = await standIn();
    const folder = newFolder();
    let render: Renderer = renderer(new Map());
    const shows: Renderer = (text, to) => render(text, to);
    const stdout = new PassThrough();
    stdout.on("data", (chunk) => {
      shown += chunk;
    });
    const onDiscord: DiscordAdapter = discord({ token: new Secret(TOKEN), render: shows, reader, log: silent, memory: ":memory:", now: Date.now, onFatal: () => {}, api: server.api, waitGuildTimeout: 300 });
    console = terminal({ stdin, stdout, render: shows, reader, person: { id: "tom", name: "Tom" }, session: "s", now: Date.now });
    const onMatrix = matrix({
      homeserver: HOMESERVER, user: bot.local, password: new Secret(bot.password), database: join(folder, "matrix.sqlite"), recovery_key_file: join(folder, "apart", "recovery-key"),
      render: shows, reader, log: silent, now: Date.now, onBroken: () => {},
    });
    adapters = [onDiscord, console, onMatrix];
    core = await openCore({ database: ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: { discord: 120_000, matrix: WINDOW_MS, terminal: 0 }, outlets: adapters, log: silent, ticking: false, stands_at_ms: NOW });
    render = renderer(core.texts);
    const shared = front({ remote: core, reader, limit_ms: 0 });
    for (const adapter of adapters) await adapter.start(shared);
    [ana, mia] = await Promise.all([person(await register("ana")), person(await register("mia"))]);
    room = await ana.do("create", { invite: [bot.user_id, mia.account.user_id], name: "Valley" });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    await mia.do("join", { room });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === mia.account.user_id);
    await sleep(500);
    for (const [network, id, records] of [["matrix", ana.account.user_id, heater(16, 260)], ["discord", bob.user, heater(10, 120)], ["terminal", "tom", heater(8, 200)]] as const) {
      const place = { network, id: network === "discord" ? `@${id}` : network === "terminal" ? "tom" : "!own", kind: "private" as const, encrypted: null };
      await core.receive({ adapter: "test", native_id: `records-${id}`, identity: { network, id }, place, received_at_ms: NOW, records });
    }
  }, 90_000);
  afterAll(async () => {
    ana?.leave();
    mia?.leave();
    stdin.end();
    for (const adapter of adapters ?? []) await adapter.stop();
    await core?.close();
    await server?.close();
    clearFolders();
  });

  const onMatrix = async (body: string): Promise<string> => {
    const from = ana.heard.length;
    await ana.say(room, `!gleed ${body}`);
    return (await ana.hears((one) => isNotice(one) && one.sender === bot.user_id, { from })).content.body ?? "";
  };
  const onDiscord = async (event: Json): Promise<{ seen: string; quiet: boolean }> => {
    const one = server.interact(event);
    if (!one) throw new Error("no session to take an interaction");
    await until("the answer", () => one.answered_ms !== null);
    const shownTo = [one.message, ...one.followUps].filter((message) => message !== null);
    return { seen: shownTo.map((message) => words(message)).join("\n"), quiet: shownTo.every((message) => ((message?.flags ?? 0) & 64) !== 0) };
  };
  const onTerminal = async (line: string): Promise<string> => {
    const before = shown.length;
    stdin.write(`${line}\n`);
    await until(`an answer to "${line}"`, () => shown.length > before);
    await sleep(50);
    return shown.slice(before);
  };
  const linkCode = async (): Promise<string> => /\b[A-Z\d]{4}-[A-Z\d]{4}\b/.exec(await onMatrix("link another place"))?.[0] ?? "none";
  /** what everybody in the channel sees */
  const posted = (code: string): Json[] => [...server.messages.values()].filter((one) => one.channel_id === ids.channel && ((one.flags ?? 0) & 64) === 0 && words(one).includes(code));

  test("linked, shared on Matrix, run on Discord and in the terminal, withdrawn everywhere", async () => {
    expect((await onDiscord(slash("group", { what: `link ${await linkCode()}` }, mod))).seen).toMatch(/now belongs to Valley/);
    expect(await onTerminal(`link ${await linkCode()}`)).toMatch(/now belongs to Valley/);
    await core.advance(0);
    await sleep(300);

    expect(await onMatrix("how much wood tonight?")).toMatch(/Share with the group/);
    const code = /\b[A-Z]\d[A-Z]\d\b/.exec(await onMatrix("share this with the group"))?.[0] ?? "none";
    expect(posted(code)).toEqual([]);
    const from = ana.heard.length;
    const typed = shown.length;
    await core.advance(0);
    const card = await ana.hears((one) => isNotice(one) && one.sender === bot.user_id && String(one.content.body).includes(`${code}:`), { from });
    expect(card.encrypted).toBe(true);
    expect(card.content.body).toMatch(/^Caution: /);
    expect(card.content.body).toMatch(/Heat loss of the house/);
    expect(shown.slice(typed)).toMatch(new RegExp(`${code}: `));
    const [message] = await until("the card on Discord", () => (posted(code).length > 0 ? posted(code) : null));
    expect(words(message ?? null)).toMatch(/Heat loss of the house/);
    for (const seen of [card.content.body ?? "", words(message ?? null), shown.slice(typed)]) expect(seen).not.toMatch(/\bana-/);

    const button = components(message ?? null).find((part) => part.type === 2 && part.label === `${code} on my heater`);
    const mine = await onDiscord(press(button?.custom_id, message ?? {}, bob));
    expect(mine.quiet).toBe(true);
    expect(mine.seen).toMatch(new RegExp(`${code} on your heater`));
    expect(mine.seen).toMatch(/most of the difference/);
    expect(words(server.messages.get(message?.id) ?? null)).toMatch(new RegExp(`${code}: `));
    const toms = await onTerminal(`${code} on my heater`);
    expect(toms).toMatch(new RegExp(`${code} on your heater`));
    expect(toms).toMatch(/200 W\/K/);

    // in a room where everybody reads along, a press shows nothing of whoever pressed
    const key = await mia.hears(({ type, relates, sender }) => type === "m.reaction" && sender === bot.user_id && relates?.event_id === card.event);
    const pressedAt = mia.heard.length;
    await mia.do("react", { room, event: card.event, key: key.relates?.key });
    const told = await mia.hears((one) => isNotice(one) && one.sender === bot.user_id, { from: pressedAt });
    expect(told.content.body).toMatch(/Write to me in private/);
    expect(told.content.body).not.toMatch(/kg/);
    await ana.hears(({ event }) => event === told.event);

    const before = ana.heard.length;
    const line = shown.length;
    expect(await onMatrix(`withdraw ${code}`)).toMatch(/is withdrawn/);
    await core.advance(0);
    const edited = await ana.hears((one) => isEdit(one) && one.relates !== null && (one.relates as { event_id?: string }).event_id === card.event, { from: before });
    expect(JSON.stringify(edited.content["m.new_content"])).toContain(`${code} was withdrawn`);
    expect(JSON.stringify(edited.content["m.new_content"])).not.toMatch(/Heat loss/);
    expect(shown.slice(line)).toMatch(new RegExp(`${code} was withdrawn`));
    await until("the card to go from Discord", () => !server.messages.has(message?.id));
    expect(posted(code).map((one) => words(one)).join()).toMatch(/was withdrawn/);
    expect(posted(code).map((one) => words(one)).join()).not.toMatch(/Heat loss/);
    expect((await onDiscord(press(button?.custom_id, posted(code)[0] ?? {}, bob))).seen).toMatch(/was withdrawn/);
    expect(await onTerminal(`run ${code}`)).toMatch(/was withdrawn/);
    expect(server.problems).toEqual([]);
  });
});
