/** The disk takes no more: Gleed ends at once with exit code 70, and with room again goes on as the same device, nothing lost. */
import { afterAll, describe, expect, test } from "vitest";
import { clearFolders, gleed, newFolder, sleep } from "./support/host.ts";
import { HOMESERVER, isNotice, person, register } from "./support/people.ts";

describe.skipIf(!HOMESERVER)("a full disk (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 120_000 }, () => {
  afterAll(clearFolders);

  test("ends with 70, then goes on where it was", async () => {
    const bot = await register("gleed");
    const folder = newFolder();
    const options = { folder, budget: { most: 1_000, in_ms: 60_000 } };
    const full = gleed(bot, options, 1_200);
    const [ana] = await Promise.all([person(await register("ana")), full.ready]);
    const room = await ana.do<string>("create", { invite: [bot.user_id], rotate: 1 });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    let isOver = false;
    let sent = 0;
    void full.ended.then(() => {
      isOver = true;
    });
    while (!isOver && sent < 150) {
      await ana.say(room, `ping ${sent++}`);
      await sleep(50);
    }
    expect(await Promise.race([full.ended, sleep(20_000).then(() => "still running")])).toBe(70);
    const again = gleed(bot, options);
    await again.ready;
    const answers = (): string[] => ana.heard.filter(isNotice).map(({ content }) => /^echo (ping \d+)/.exec(content.body ?? "")?.[1] ?? String(content.body));
    for (let waits = 0; waits < 160 && new Set(answers()).size < sent; waits++) await sleep(250);
    await sleep(1_000);
    expect(answers().sort()).toEqual(Array.from({ length: sent }, (_, n) => `ping ${n}`).sort());
    expect(full.lines.find(({ device }) => device)?.device).toBe(again.lines.find(({ device }) => device)?.device);
    expect(ana.heard.filter(({ failure }) => failure !== null)).toEqual([]);
    await again.stop();
    ana.leave();
  });
});
