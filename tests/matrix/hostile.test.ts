/** People and programs that mean no good, or do not know better. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { clearFolders, type Gleed, gleed, newFolder, sleep } from "./support/host.ts";
import { type Account, HOMESERVER, isNotice, type Person, person, register } from "./support/people.ts";

describe.skipIf(!HOMESERVER)("mischief (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 60_000 }, () => {
  let bot: Account;
  let host: Gleed;
  let ana: Person;
  let mal: Person;
  let room: string;

  beforeAll(async () => {
    const [friend, stranger] = [await register("ana"), await register("mal")];
    bot = await register("gleed");
    host = gleed(bot, { folder: newFolder(), invites: [friend.user_id], budget: { most: 12, in_ms: 60_000 } });
    [ana, mal] = await Promise.all([person(friend), person(stranger), host.ready]);
    room = await ana.do("create", { invite: [bot.user_id, mal.account.user_id] });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    await mal.do("join", { room });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === mal.account.user_id);
    await sleep(500);
  }, 60_000);
  afterAll(async () => {
    ana?.leave();
    mal?.leave();
    await host?.stop();
    clearFolders();
  });
  const answer = async (by: Person, words: string, more: object = {}) => {
    const from = by.heard.length;
    await by.say(room, `!gleed ${words}`, more);
    return by.hears((one) => isNotice(one) && one.sender === bot.user_id, { from });
  };

  test("an invitation by somebody who is not listed is refused, with the reason", async () => {
    const trap = await mal.do<string>("create", { invite: [bot.user_id] });
    const left = await mal.hears(({ type, room: where, content, sender }) => where === trap && type === "m.room.member" && sender === bot.user_id && content.membership === "leave");
    expect(String(left.content.reason)).toMatch(/listed/);
  });

  test("in a listed person's room everybody may ask", async () => {
    expect((await answer(mal, "may I?")).content.body).toMatch(/^echo may I\?/);
  });

  test("markup, links and mentions in a message come back as words", async () => {
    const evil = '<img src=x onerror=alert(1)><a href="https://evil.example">win</a> @room https://evil.example </p></ol><script>x</script>';
    const { content } = await answer(mal, evil);
    expect(content.formatted_body).not.toMatch(/<(img|a|script)\b/i);
    expect(content.formatted_body).toContain("&lt;img");
    expect(content.body).not.toMatch(/https:\/\/evil|@room\b/);
    expect(content["m.mentions"]).toEqual({});
  });

  test("a huge message is taken, cut, and answered", async () => {
    const { content } = await answer(mal, "x ".repeat(20_000));
    expect(content.body?.length).toBeGreaterThan(1_000);
    expect(content.body?.length).toBeLessThan(20_000);
  });

  test("malformed events end nothing", async () => {
    for (const content of [{}, { msgtype: "m.text" }, { msgtype: "m.text", body: 7 }, { msgtype: ["m.text"], body: {} }, { msgtype: "m.text", body: "x", "m.relates_to": 5, "m.mentions": "all" }]) {
      await mal.do("send", { room, content });
    }
    await mal.do("raw", { room, type: "m.reaction", content: { "m.relates_to": { rel_type: "m.annotation", key: "1" } } }).catch(() => {});
    expect((await answer(ana, "still there?")).content.body).toMatch(/^echo still there/);
  });

  test("another's message cannot be edited into a call for help; one's own can", async () => {
    const event = await ana.say(room, "all is well");
    const edit = (of: string) => ({ "m.new_content": { msgtype: "m.text", body: "the chimney is on fire!" }, "m.relates_to": { rel_type: "m.replace", event_id: of } });
    const from = ana.heard.length;
    await mal.say(room, "* the chimney is on fire!", edit(event));
    await sleep(1_500);
    expect(ana.heard.slice(from).filter((one) => isNotice(one) && one.sender === bot.user_id)).toEqual([]);
    await ana.say(room, "* the chimney is on fire!", edit(event));
    await ana.hears((one) => isNotice(one) && one.sender === bot.user_id && /112|911|emergency number/i.test(one.content.body ?? ""), { from });
  });

  test("a flood of state is sat out", async () => {
    await Promise.all(Array.from({ length: 250 }, (_, at) => ana.do("state", { room, type: "org.example.spam", key: `k${at}`, content: { words: "y".repeat(2_000) } })));
    expect((await answer(ana, "after the flood")).content.body).toMatch(/^echo after the flood/);
  });

  test("two programs that answer each other come to an end", async () => {
    const from = mal.heard.length;
    let replies = 0;
    const isAnswer = (one: { sender: string }): boolean => one.sender === bot.user_id;
    await mal.say(room, "!gleed round 0");
    for (let seen = from; replies < 60; ) {
      const next = mal.heard.slice(seen).findIndex((one) => isNotice(one) && isAnswer(one));
      if (next < 0) {
        await sleep(2_500);
        if (!mal.heard.slice(seen).some((one) => isNotice(one) && isAnswer(one))) break;
        continue;
      }
      const heard = mal.heard[seen + next]!;
      seen += next + 1;
      replies += 1;
      await mal.say(room, `round ${replies}`, { "m.relates_to": { "m.in_reply_to": { event_id: heard.event } } });
    }
    expect(replies).toBeGreaterThan(2);
    expect(replies).toBeLessThanOrEqual(14);
    // danger is answered all the same
    const now = mal.heard.length;
    await mal.say(room, "!gleed my house is full of smoke and I feel dizzy");
    await mal.hears((one) => isNotice(one) && isAnswer(one), { from: now });
  });
});
