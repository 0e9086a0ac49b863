/**
 * Gleed's process is killed (kill -9) at random moments while somebody writes on, also while it is down. The room changes its key every
 * third message, far more often than clients do. Eight kills; GLEED_TEST_MATRIX_KILLS=30 for the long run.
 */
import { afterAll, describe, expect, test } from "vitest";
import { clearFolders, type Gleed, gleed, type Line, newFolder, sleep } from "./support/host.ts";
import { HOMESERVER, isNotice, person, register } from "./support/people.ts";

const KILLS = Number(process.env.GLEED_TEST_MATRIX_KILLS ?? 8);
const MESSAGES = KILLS * 10;
const SEED = Number(process.env.GLEED_TEST_SEED ?? 20261125);

function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

async function deviceKeys(token: string, user_id: string): Promise<unknown> {
  const response = await fetch(`${HOMESERVER}/_matrix/client/v3/keys/query`, {
    method: "POST", headers: { authorization: `Bearer ${token}` }, body: JSON.stringify({ device_keys: { [user_id]: [] } }),
  });
  const { device_keys, master_keys } = (await response.json()) as { device_keys: Record<string, Record<string, { keys: object }>>; master_keys: object };
  return { devices: Object.entries(device_keys[user_id] ?? {}).map(([id, { keys }]) => ({ id, keys })), master_keys };
}

describe.skipIf(!HOMESERVER)(`${KILLS} kills (set GLEED_TEST_MATRIX to a homeserver to run this)`, { timeout: 60_000 + KILLS * 12_000 }, () => {
  afterAll(clearFolders);

  test("the same device and identity, nothing undecryptable, each message answered exactly once", async () => {
    const next = random(SEED);
    const bot = await register("gleed");
    const folder = newFolder();
    const options = { folder, budget: { most: 100_000, in_ms: 60_000 } };
    let host: Gleed = gleed(bot, options);
    const lines: Line[] = [];
    const [ana] = await Promise.all([person(await register("ana")), host.ready]);
    const room = await ana.do<string>("create", { invite: [bot.user_id], rotate: 3 });
    await ana.hears(({ type, sender }) => type === "m.room.member" && sender === bot.user_id);
    await ana.say(room, "ping 0");
    await ana.hears(isNotice);
    const before = await deviceKeys(ana.account.token, bot.user_id);

    let sent = 0;
    let isWriting = true;
    const writing = (async () => {
      while (isWriting || sent < MESSAGES) {
        sent += 1;
        await ana.say(room, `ping ${sent}`);
        await sleep(100 + next() * 300);
      }
    })();
    let kills = 0;
    let loaded = 0;
    while (kills < KILLS || loaded < (KILLS * 2) / 3) {
      await sleep(500 + next() * 3_500);
      const wasReady = host.isReady();
      await host.kill();
      lines.push(...host.lines);
      kills += 1;
      if (wasReady) loaded += 1;
      await sleep(next() < 0.1 ? 5_000 : next() * 1_000);
      host = gleed(bot, options);
    }
    isWriting = false;
    await writing;
    await host.ready;
    const answers = (): Map<string, number> =>
      ana.heard.filter(isNotice).reduce((count, { content }) => {
        const n = /^echo (ping \d+) /.exec(content.body ?? "")?.[1] ?? String(content.body);
        return count.set(n, (count.get(n) ?? 0) + 1);
      }, new Map<string, number>());
    // until all is answered, or for twenty seconds nothing more comes
    for (let [quiet_ms, size] = [0, 0]; quiet_ms < 20_000 && answers().size < sent + 1; quiet_ms = answers().size > size ? 0 : quiet_ms + 250) {
      size = answers().size;
      await sleep(250);
    }
    await sleep(1_500);
    const after = await deviceKeys(ana.account.token, bot.user_id);
    await host.stop();
    lines.push(...host.lines);
    ana.leave();

    const counted = answers();
    const missing = Array.from({ length: sent + 1 }, (_, n) => `ping ${n}`).filter((one) => !counted.has(one));
    const twice = [...counted].filter(([, count]) => count > 1);
    const why = lines.flatMap((line) => line.why ?? []);
    console.log(`${kills} kills, ${loaded} of them with crypto loaded, ${sent + 1} messages, ${missing.length} missing, ${twice.length} twice`);
    expect({ missing, twice }).toEqual({ missing: [], twice: [] });
    expect(after).toEqual(before);
    expect(ana.heard.filter(({ failure }) => failure !== null)).toEqual([]);
    expect(why.filter((one) => /one[- ]time key/i.test(one))).toEqual([]);
    expect(lines.filter(({ words }) => words === "an event was given up")).toEqual([]);
    expect(loaded).toBeGreaterThanOrEqual((KILLS * 2) / 3);
  });
});
