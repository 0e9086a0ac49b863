/** Groups, threads, rights, rooms without encryption: who is answered, where, and what is left alone. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { clearFolders, type Gleed, gleed, newFolder, sleep } from "./support/host.ts";
import { type Account, HOMESERVER, isNotice, type Person, person, register } from "./support/people.ts";

/** long enough for an answer that should not come */
const SILENCE_MS = 1_500;

describe.skipIf(!HOMESERVER)("groups (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 60_000 }, () => {
  let bot: Account;
  let host: Gleed;
  let ana: Person;
  let ben: Person;
  let room: string;

  beforeAll(async () => {
    bot = await register("gleed");
    host = gleed(bot, { folder: newFolder() });
    [ana, ben] = await Promise.all([person(await register("ana")), person(await register("ben")), host.ready]);
    room = await ana.do("create", { invite: [bot.user_id, ben.account.user_id], name: "Valley" });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    await ben.do("join", { room });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === ben.account.user_id);
    await sleep(500);
  }, 60_000);
  afterAll(async () => {
    ana?.leave();
    ben?.leave();
    await host?.stop();
    clearFolders();
  });

  const silence = async (work: () => Promise<unknown>): Promise<void> => {
    const from = ana.heard.length;
    await work();
    await sleep(SILENCE_MS);
    expect(ana.heard.slice(from).filter((one) => one.sender === bot.user_id && one.type !== "m.room.member")).toEqual([]);
  };
  const answer = async (work: () => Promise<unknown>) => {
    const from = ana.heard.length;
    await work();
    return ana.hears((one) => isNotice(one) && one.sender === bot.user_id, { from });
  };

  test("talk among people is left alone; a mention, a reply and the prefix are answered, as replies", async () => {
    await silence(() => ben.say(room, "nice evening everybody"));
    const mention = await answer(() => ben.say(room, "Gleed, what now?", { "m.mentions": { user_ids: [bot.user_id] } }));
    expect(mention.content.body).toMatch(/^echo .*what now\? group member/);
    expect(mention.relates?.["m.in_reply_to"]?.event_id).toBeTruthy();
    expect(mention.content["m.mentions"]).toEqual({});
    const reply = await answer(() => ben.say(room, "and then?", { "m.relates_to": { "m.in_reply_to": { event_id: mention.event } } }));
    expect(reply.content.body).toMatch(/^echo and then\?/);
    expect((await answer(() => ana.say(room, "!gleed hello"))).content.body).toMatch(/^echo hello group moderates/);
    await silence(() => ben.say(room, "!gleedish words"));
  });

  test("only somebody with the right may change the prefix", async () => {
    expect((await answer(() => ben.say(room, "!gleed prefix ?"))).content.body).toMatch(/may change/);
    expect((await answer(() => ana.say(room, "!gleed prefix ?"))).content.body).toMatch(/\?/);
    expect((await answer(() => ben.say(room, "? hello"))).content.body).toMatch(/^echo hello/);
    await silence(() => ben.say(room, "!gleed hello"));
    await answer(() => ana.say(room, "? prefix !gleed"));
  });

  test("threads are kept", async () => {
    const root = await ben.say(room, "a matter of its own");
    const { relates } = await answer(() => ben.say(room, "!gleed in here", { "m.relates_to": { rel_type: "m.thread", event_id: root } }));
    expect(relates).toMatchObject({ rel_type: "m.thread", event_id: root });
  });

  test("a key counts for the one who was asked, and for nobody else", async () => {
    const asked = await answer(() => ana.say(room, "!gleed ask"));
    const key = await ana.hears(({ type, relates }) => type === "m.reaction" && relates?.event_id === asked.event && relates.key?.startsWith("2") === true);
    await silence(() => ben.do("react", { room, event: asked.event, key: key.relates?.key }));
    expect((await answer(() => ana.do("react", { room, event: asked.event, key: key.relates?.key }))).content.body).toMatch(/^echo choice b/);
  });

  test("a choice is taken by number and by words, in a private room without any sign", async () => {
    const own = await ana.do<string>("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender, room: where }) => type === "m.room.member" && sender === bot.user_id && where === own);
    await answer(() => ana.say(own, "ask"));
    expect((await answer(() => ana.say(own, "2"))).content.body).toMatch(/^echo choice b private moderates/);
    await answer(() => ana.say(own, "ask"));
    expect((await answer(() => ana.say(own, "A!"))).content.body).toMatch(/^echo choice a/);
  });

  test("a form is asked one question at a time, in private and in a group", async () => {
    const own = await ana.do<string>("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender, room: where }) => type === "m.room.member" && sender === bot.user_id && where === own);
    for (const [where, sign] of [[own, ""], [room, "!gleed "]] as const) {
      const say = async (words: string): Promise<string> => (await answer(() => ana.say(where, `${sign}${words}`))).content.body ?? "";
      expect(await say("form")).toMatch(/1\. Fill in/);
      expect(await say("1")).toMatch(/^1 of 3: Name\n.*"skip"/s);
      expect(await say("skip")).toMatch(/^2 of 3: Which\n1\. a!\n2\. b!/);
      expect(await say("perhaps")).toMatch(/^Type a number from 1 to 2/);
      expect(await say("back")).toMatch(/^1 of 3/);
      expect(await say("Oak & Sons <b>")).toMatch(/^2 of 3/);
      expect(await say("2")).toMatch(/^3 of 3/);
      expect(await say("y")).toMatch(/^echo form \{"name":"Oak & Sons <b>","which":"b","sure":true\}/);
      expect(await say("2")).toMatch(/^echo 2 /);
    }
  });

  test("a picture is fetched and opened, other files are not", async () => {
    const own = await ana.do<string>("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender, room: where }) => type === "m.room.member" && sender === bot.user_id && where === own);
    expect((await answer(() => ana.do("picture", { room: own }))).content.body).toMatch(/^echo picture 70 /);
    expect((await answer(() => ana.do("send", { room: own, content: { msgtype: "m.audio", body: "voice.ogg", url: "mxc://x/y" } }))).content.body).toMatch(/words/);
  });

  test("notices are never answered, danger always", async () => {
    await silence(() => ben.do("send", { room, content: { msgtype: "m.notice", body: "!gleed hello" } }));
    expect((await answer(() => ben.say(room, "help, the chimney is on fire"))).content.body).toMatch(/112|911|emergency number/i);
  });

  test("without encryption nothing is answered but danger, and the reason is said once", async () => {
    const open = await ana.do<string>("create", { invite: [bot.user_id], encrypted: false });
    await ana.hears(({ type, sender, room: where }) => type === "m.room.member" && sender === bot.user_id && where === open);
    expect((await answer(() => ana.say(open, "hello"))).content.body).toMatch(/not encrypted/);
    await silence(() => ana.say(open, "hello again"));
    expect((await answer(() => ana.say(open, "the carbon monoxide alarm is beeping"))).content.body).toMatch(/112|911|out/i);
  });

  test("a room with nobody else in it is left", async () => {
    const brief = await ana.do<string>("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender, room: where }) => type === "m.room.member" && sender === bot.user_id && where === brief);
    await ana.do("leave", { room: brief });
    const rooms = async (): Promise<string[]> =>
      ((await (await fetch(`${HOMESERVER}/_matrix/client/v3/joined_rooms`, { headers: { authorization: `Bearer ${bot.token}` } })).json()) as { joined_rooms: string[] }).joined_rooms;
    for (let waits = 0; waits < 40 && (await rooms()).includes(brief); waits++) await sleep(100);
    expect(await rooms()).not.toContain(brief);
  });
});
