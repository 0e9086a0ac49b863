/** An evening in an encrypted room on a real homeserver: somebody with another client asks, is answered, guided, and reminded later. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { clearFolders, type Gleed, gleed, newFolder } from "./support/host.ts";
import { type Account, HOMESERVER, isEdit, isNotice, type Person, person, register } from "./support/people.ts";

const EVENING_MS = Date.parse("2026-11-25T17:00:00Z");
const HOUR_MS = 3_600_000;

describe.skipIf(!HOMESERVER)("an encrypted room (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 60_000 }, () => {
  let bot: Account;
  let host: Gleed;
  let ana: Person;
  let room: string;

  beforeAll(async () => {
    bot = await register("gleed");
    host = gleed(bot, { core: "whole", folder: newFolder(), stands_at_ms: EVENING_MS });
    [ana] = await Promise.all([person(await register("ana")), host.ready]);
    room = await ana.do("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
  }, 60_000);
  afterAll(async () => {
    ana?.leave();
    await host?.stop();
    clearFolders();
  });

  test("black glass: the whole answer arrives encrypted, the caution first, from a signed device, and calls nobody", async () => {
    await ana.say(room, "why did my glass go black?");
    const { content, encrypted, failure, event } = await ana.hears(isNotice);
    expect({ encrypted, failure }).toEqual({ encrypted: true, failure: null });
    expect(content.body).toMatch(/^Caution: /);
    expect(content.body).toMatch(/damp wood/i);
    expect(content.formatted_body).toMatch(/^<p><strong>Caution:<\/strong>/);
    expect(content["m.mentions"]).toEqual({});
    expect(await ana.do("shield", { room, event })).toMatchObject({ shieldColour: 0 });
  });

  test("a key below the answer is pressed, and it goes on from there", async () => {
    const from = ana.heard.length;
    const key = await ana.hears(({ type, relates }) => type === "m.reaction" && relates?.key?.startsWith("1") === true);
    expect(key.encrypted).toBe(false);
    await ana.do("react", { room, event: key.relates?.event_id, key: key.relates?.key });
    const next = await ana.hears(isNotice, { from });
    expect(next.encrypted).toBe(true);
    expect(next.content.body).not.toBe("");
  });

  test("a picture comes encrypted, with its description in words", async () => {
    const from = ana.heard.length;
    await ana.say(room, "my heater is a 3000 kg bell, rated 16 kg, walls 110 mm, facing 12 m2 of brick");
    await ana.hears(isNotice, { from });
    const asked = ana.heard.length;
    await ana.say(room, "show me the heat curve for 12 kg of wood at 15 % lit at 18:00");
    const { content, encrypted } = await ana.hears(({ content: { msgtype } }) => msgtype === "m.image", { from: asked, within_ms: 30_000 });
    expect(encrypted).toBe(true);
    expect(content.url).toBeUndefined();
    expect(content.body).toMatch(/\w+ \w+ \w+/);
    expect(await ana.do("fetch", { file: content.file })).toMatchObject({ start: expect.stringMatching(/^\x89PNG/) });
  });

  test("danger is answered at once, before what was asked earlier", async () => {
    const from = ana.heard.length;
    await Promise.all([ana.say(room, "how long does oak take to dry?"), ana.say(room, "the chimney is on fire!")]);
    const urgent = await ana.hears(({ content }) => /112/.test(content.body ?? ""), { from });
    expect(urgent.content.body).toMatch(/fire service|call|112/i);
    await ana.hears((one) => isNotice(one) && one.event !== urgent.event, { from });
  });

  test("a fire guide is walked: its message is edited while it is pressed, and check-ins call the person", async () => {
    const calm = ana.heard.length;
    await ana.say(room, "it is out, all fine now");
    await ana.hears(isNotice, { from: calm });
    const before = ana.heard.length;
    await ana.say(room, "walk me through a fire");
    const first = await ana.hears(isNotice, { from: before });
    const keyOf = (event: string, not: string | undefined = undefined, from = before) =>
      ana.hears(({ type, relates }) => type === "m.reaction" && relates?.event_id === event && relates.key !== not, { from });
    const press = async (event: string, key: string | undefined) => {
      const from = ana.heard.length;
      await ana.do("react", { room, event, key });
      return ana.hears(isNotice, { from });
    };
    // from the top or from below is asked first; then the guide itself begins, and is edited while there are keys left for fresh numbers
    let shown = first;
    let key = (await keyOf(first.event)).relates?.key;
    const edits: typeof first[] = [];
    for (let steps = 0; steps < 6 && edits.length === 0; steps++) {
      const before_press = shown;
      const next = await press(shown.event, key);
      expect(next.encrypted).toBe(true);
      if (isEdit(next)) {
        expect(next.relates?.event_id).toBe(before_press.event);
        expect((next.content["m.new_content"] as { body: string }).body).not.toBe(before_press.content.body);
        edits.push(next);
        expect((await keyOf(before_press.event, key, ana.heard.indexOf(next))).relates?.key).not.toBe(key);
      } else {
        shown = next;
        key = (await keyOf(next.event)).relates?.key;
      }
    }
    expect(edits).toHaveLength(1);
    const moved = ana.heard.length;
    host.tell({ advance: 1.5 * HOUR_MS });
    const called = await ana.hears((one) => isNotice(one) && !isEdit(one), { from: moved });
    expect(called.content.msgtype).toBe("m.text");
    expect(called.content["m.mentions"]).toEqual({ user_ids: [ana.account.user_id] });
  });

  test("a reminder comes the next day", async () => {
    const from = ana.heard.length;
    await ana.say(room, "remind me tomorrow at 9:00 to empty the ash box");
    await ana.hears((one) => isNotice(one), { from });
    const asked = ana.heard.length;
    host.tell({ advance: 20 * HOUR_MS });
    const reminder = await ana.hears(({ content }) => /ash box/i.test(content.body ?? ""), { from: asked });
    expect(reminder.encrypted).toBe(true);
  });

  test("everything was decrypted, and nothing but keys below messages went in clear", () => {
    const said = ana.heard.filter(({ sender, type }) => sender === bot.user_id && !type.startsWith("m.room.member"));
    expect(said.length).toBeGreaterThan(10);
    expect(said.filter(({ failure }) => failure !== null)).toEqual([]);
    expect(said.filter(({ encrypted, type }) => !encrypted && type !== "m.reaction" && type !== "m.room.redaction")).toEqual([]);
    expect(host.lines.filter(({ log }) => log === "error")).toEqual([]);
  });
});
