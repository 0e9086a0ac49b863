/** The database is lost: a new device and the recovery key are enough. Without the key, or with a token of the lost device, it says so. */
import { execFile } from "node:child_process";
import { rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { afterAll, describe, expect, test } from "vitest";
import { clearFolders, gleed, newFolder, sleep } from "./support/host.ts";
import { HOMESERVER, isNotice, loginAgain, person, register } from "./support/people.ts";

describe.skipIf(!HOMESERVER)("a lost database (set GLEED_TEST_MATRIX to a homeserver to run this)", { timeout: 120_000 }, () => {
  afterAll(clearFolders);

  test("the recovery key alone restores old rooms on a new device, which is signed like the old one", async () => {
    const bot = await register("gleed");
    const folder = newFolder();
    const recovery_key_file = join(newFolder(), "key");
    let host = gleed(bot, { folder, recovery_key_file });
    const [ana] = await Promise.all([person(await register("ana")), host.ready]);
    const room = await ana.do<string>("create", { invite: [bot.user_id], rotate: 2 });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    for (let n = 0; n < 6; n++) {
      const from = ana.heard.length;
      await ana.say(room, `old ${n}`);
      await ana.hears(isNotice, { from });
    }
    expect(statSync(recovery_key_file).mode & 0o777).toBe(0o600);
    expect(statSync(join(folder, "matrix.sqlite")).mode & 0o777).toBe(0o600);
    // the backup is filled in the background, within some ten seconds
    const keys = async (): Promise<number> =>
      ((await (await fetch(`${HOMESERVER}/_matrix/client/v3/room_keys/version`, { headers: { authorization: `Bearer ${bot.token}` } })).json()) as { count?: number }).count ?? 0;
    for (let waits = 0; waits < 80 && (await keys()) < 6; waits++) await sleep(250);
    await host.kill();
    for (const end of ["", "-wal", "-shm"]) rmSync(join(folder, `matrix.sqlite${end}`), { force: true });

    const script = fileURLToPath(new URL("./support/restore.ts", import.meta.url));
    const { stdout } = await promisify(execFile)(process.execPath, [script, HOMESERVER, bot.local, bot.password, newFolder(), recovery_key_file, room]);
    const restored = JSON.parse(stdout.trim().split("\n").at(-1) ?? "{}") as { encrypted: number; read: number; signed: boolean };
    console.log(`on a new device ${restored.read} of ${restored.encrypted} old messages are read`);
    expect(restored).toMatchObject({ read: restored.encrypted, signed: true });
    expect(restored.encrypted).toBeGreaterThanOrEqual(12);

    host = gleed(bot, { folder, recovery_key_file });
    await host.ready;
    await sleep(1_000);
    const from = ana.heard.length;
    await ana.say(room, "after the loss");
    const { content, event } = await ana.hears(isNotice, { from });
    expect(content.body).toMatch(/^echo after the loss/);
    expect(await ana.do("shield", { room, event })).toMatchObject({ shieldColour: 0 });
    expect(ana.heard.slice(from).filter((one) => isNotice(one) && /old \d/.test(one.content.body ?? ""))).toEqual([]);
    await host.stop();
    ana.leave();
  });

  test("without the recovery key it does not start over behind everybody's back", async () => {
    const bot = await register("gleed");
    const first = gleed(bot, { folder: newFolder() });
    await first.ready;
    await first.stop();
    const second = gleed(bot, { folder: newFolder() });
    await expect(second.ready).rejects.toThrow(/recovery key/);
  });

  test("the token of a device whose keys are lost is refused in a sentence; a new token works", async () => {
    const bot = await register("gleed");
    const key = join(newFolder(), "key");
    const first = gleed(bot, { folder: newFolder(), token: bot.token, recovery_key_file: key });
    await first.ready;
    await first.stop();
    const again = gleed(bot, { folder: newFolder(), token: bot.token, recovery_key_file: key });
    await expect(again.ready).rejects.toThrow(/Log in anew/);
    const { token } = await loginAgain(bot);
    const third = gleed(bot, { folder: newFolder(), token, recovery_key_file: key });
    await third.ready;
    await third.stop();
  });

  test("a session that was ended from outside ends the process; the next start is a new device that is signed again", async () => {
    const bot = await register("gleed");
    const folder = newFolder();
    const first = gleed(bot, { folder });
    const [ana] = await Promise.all([person(await register("ana")), first.ready]);
    const room = await ana.do<string>("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    await fetch(`${HOMESERVER}/_matrix/client/v3/logout/all`, { method: "POST", headers: { authorization: `Bearer ${bot.token}` } });
    expect(await first.ended).toBe(1);
    const second = gleed(bot, { folder });
    await second.ready;
    await sleep(500);
    await ana.say(room, "and now?");
    const { content, event } = await ana.hears(isNotice);
    expect(content.body).toMatch(/^echo and now/);
    expect(await ana.do("shield", { room, event })).toMatchObject({ shieldColour: 0 });
    await second.stop();
    ana.leave();
  });

  test("a device that somebody adds while Gleed is down reads what is answered afterwards", async () => {
    const bot = await register("gleed");
    const folder = newFolder();
    const first = gleed(bot, { folder });
    const account = await register("ana");
    const [ana] = await Promise.all([person(account), first.ready]);
    const room = await ana.do<string>("create", { invite: [bot.user_id] });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    await ana.say(room, "before");
    await ana.hears(isNotice);
    await first.kill();
    const second_device = await person(await loginAgain(account));
    await sleep(1_000);
    const second = gleed(bot, { folder });
    await second.ready;
    await ana.say(room, "after");
    const heard = await second_device.hears((one) => one.sender === bot.user_id && one.failure === null && /^echo after/.test(one.content.body ?? ""));
    expect(heard.encrypted).toBe(true);
    await second.stop();
    ana.leave();
    second_device.leave();
  });
});
