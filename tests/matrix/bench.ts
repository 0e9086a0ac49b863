/**
 * A large account: how long until ready, how much memory, how fast an answer, beside a bare echo on the same SDK without our store.
 *
 *   GLEED_TEST_MATRIX=http://127.0.0.1:8008 node tests/matrix/bench.ts [members] [rooms]
 */
import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { clearFolders, gleed, newFolder, sleep } from "./support/host.ts";
import { type Account, HOMESERVER, isNotice, person, register } from "./support/people.ts";

const [members = 500, rooms = 200] = process.argv.slice(2).map(Number);
const ASKED = 20;
const ENCRYPTION = { type: "m.room.encryption", state_key: "", content: { algorithm: "m.megolm.v1.aes-sha2" } };

const post = async (account: Account, path: string, body: object, method = "POST"): Promise<Record<string, string>> =>
  (await (await fetch(`${HOMESERVER}/_matrix/client/v3${path}`, { method, headers: { authorization: `Bearer ${account.token}` }, body: JSON.stringify(body) })).json()) as Record<string, string>;

async function inBatches<T>(list: readonly T[], most: number, work: (one: T) => Promise<unknown>): Promise<void> {
  const waiting = [...list];
  await Promise.all(Array.from({ length: most }, async () => {
    for (let one = waiting.shift(); one !== undefined; one = waiting.shift()) await work(one);
  }));
}

/** The SDK alone: crypto in memory, answers what it is told. */
async function bare(account: Account): Promise<{ ready_ms: number; rss_MB: number; ask: () => number; end: () => void }> {
  const from = performance.now();
  const child = spawn(process.execPath, [fileURLToPath(new URL("./support/bare.ts", import.meta.url)), HOMESERVER, account.user_id, account.device_id, account.token], { stdio: ["pipe", "pipe", "ignore"] });
  const lines = createInterface({ input: child.stdout });
  let rss_MB = 0;
  const ready_ms = await new Promise<number>((resolve) => lines.on("line", (line) => {
    const said = line.startsWith("{") ? (JSON.parse(line) as { ready?: true; rss_MB: number }) : null;
    if (!said) return;
    rss_MB = said.rss_MB;
    if (said.ready) resolve(performance.now() - from);
  }));
  return { ready_ms, rss_MB, ask: () => rss_MB, end: () => child.kill() };
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

const [owner, ours, theirs] = [await register("owner"), await register("gleed"), await register("bare")];
const crowd: Account[] = [];
await inBatches(Array.from({ length: members }), 8, async () => crowd.push(await register("crowd")));
const make = (extra: object): Promise<Record<string, string>> => post(owner, "/createRoom", { preset: "public_chat", initial_state: [ENCRYPTION], ...extra });
const large = (await make({ name: "large" })).room_id ?? "";
await inBatches([...crowd, ours, theirs], 8, (one) => post(one, `/join/${encodeURIComponent(large)}`, {}));
await inBatches(Array.from({ length: rooms }), 4, async () => {
  const { room_id = "" } = await make({});
  for (const one of [ours, theirs]) await post(one, `/join/${encodeURIComponent(room_id)}`, {});
});
console.log(`${members} members in one room, ${rooms} rooms`);

const folder = newFolder();
const from = performance.now();
let host = gleed(ours, { folder, budget: { most: 10_000, in_ms: 60_000 } });
await host.ready;
const first_ms = performance.now() - from;
const other = await bare(theirs);
const ana = await person(owner);
const took = { ours: [] as number[], theirs: [] as number[] };
for (let n = 0; n < ASKED; n++) {
  for (const [name, account] of [["ours", ours], ["theirs", theirs]] as const) {
    const heard = ana.heard.length;
    const sent = performance.now();
    await ana.say(large, `!gleed ping ${n}`, { "m.mentions": { user_ids: [account.user_id] }, to: account.user_id });
    await ana.hears((one) => isNotice(one) && one.sender === account.user_id, { from: heard, within_ms: 60_000 });
    took[name].push(performance.now() - sent);
    await sleep(200);
  }
}
host.tell({ memory: true });
await sleep(500);
const rss = host.lines.findLast(({ rss_MB }) => rss_MB !== undefined)?.rss_MB;
await host.kill();
const again = performance.now();
host = gleed(ours, { folder });
await host.ready;
const again_ms = performance.now() - again;
const row = (name: string, ...values: (number | undefined)[]): string => [name.padEnd(28), ...values.map((value) => (value === undefined ? "-" : value.toFixed(0)).padStart(10))].join("");
console.log([
  row("", undefined, undefined).replace(/-/g, " ").slice(0, 28) + "      ours      bare",
  row("ready, first start, ms", first_ms, other.ready_ms),
  row("ready, after kill -9, ms", again_ms, undefined),
  row("answer, first, ms", took.ours[0], took.theirs[0]),
  row("answer, median, ms", median(took.ours), median(took.theirs)),
  row("memory, MB", rss, other.ask()),
].join("\n"));
await host.kill();
other.end();
ana.leave();
clearFolders();
process.exit(0);
