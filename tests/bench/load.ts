/**
 * `npm run bench:load -- [seconds = 30]`: 1,000 groups, 50,000 owners, 20 messages a second whether or not the last ones are answered, on a
 * SQLite file and, when GLEED_TEST_POSTGRES names one, on PostgreSQL with two workers. 50 ms for 99 of 100 answers are wanted. Fails when they take
 * longer than 100, when one is missing, or when memory keeps growing.
 */
import { type ChildProcess, fork } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import pg from "pg";
import { dice } from "../../demo/winters.ts";
import type { Message } from "../../src/message.ts";
import { fill, groupOf, ownerOf } from "./load-people.ts";

const OWNERS = 50_000;
const GROUPS = 1_000;
const PER_SECOND = 20;
const P99_MS = 50;
/** a machine with other work to do is forgiven this much */
const WORST_P99_MS = 100;
const GROWTH_MIB = 40;
const WARM_UP_S = 10;
const seconds = Number(process.argv[2] ?? 30);

const PRIVATE_TALK = [
  "how much wood tonight? low of -7", "why did my glass go black last night?", "can I close the damper now?", "is 22% dry basis dry enough?", "show my fires", "how much heat is in 12 kg of birch at 18 %?",
  "log: 11 kg birch 17% lit 18:10", "when is it warmest?", "what upkeep is due?", "remind me on 1 december at 9 to test the alarm", "it smokes when I light it", "thanks", "how long does oak need to dry?",
];
const GROUP_TALK = ["how much heat is in 10 kg of spruce?", "can i burn pallets", "why does my glass go black", "what is a bypass?", "how do I clean the glass?"];

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const rss_MiB = (child: ChildProcess): number => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, "utf8"))?.[1] ?? 0) / 1024;
const at = (list: readonly number[], share: number): number => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * share))] ?? Number.NaN;

function messages(roll: () => number): (n: number) => Message {
  const run = Date.now().toString(36);
  return (n) => {
    const owner = ownerOf(Math.floor(roll() * OWNERS));
    const inGroup = roll() < 0.3;
    const talk = inGroup ? GROUP_TALK : PRIVATE_TALK;
    return {
      adapter: "lines", native_id: `${run}:${n}`, received_at_ms: Date.now(), identity: { network: "lines", id: owner, name: owner }, text: talk[Math.floor(roll() * talk.length)] ?? "help",
      place: inGroup ? { network: "lines", id: groupOf(Math.floor(roll() * GROUPS)), kind: "group", encrypted: null } : { network: "lines", id: `private:${owner}`, kind: "private", encrypted: null },
    };
  };
}

async function worker(database: string): Promise<ChildProcess> {
  const child = fork(fileURLToPath(new URL("./load-worker.ts", import.meta.url)), [], { env: { ...process.env, GLEED_DATABASE: database }, serialization: "advanced" });
  await new Promise((resolve, reject) => {
    child.once("message", resolve);
    child.once("exit", (code) => reject(new Error(`a worker ended with ${code}`)));
  });
  return child;
}

async function run(name: string, database: string, workers: number): Promise<boolean> {
  const from = performance.now();
  await fill(database, OWNERS, GROUPS, Date.now());
  console.log(`${name}: ${OWNERS.toLocaleString("en")} owners and ${GROUPS.toLocaleString("en")} groups written in ${((performance.now() - from) / 1000).toFixed(0)} s`);
  const children = await Promise.all(Array.from({ length: workers }, () => worker(database)));
  const arrived = new Map<number, number>();
  const took: number[] = [];
  const failed: string[] = [];
  let counting = false;
  for (const child of children) {
    child.on("message", ({ n, error }: { n: number; error?: string }) => {
      const ms = performance.now() - (arrived.get(n) ?? Number.NaN);
      arrived.delete(n);
      if (error) failed.push(error);
      else if (counting) took.push(ms);
    });
  }
  const next = messages(dice(7));
  let n = 0;
  const arrivals = async (count: number): Promise<void> => {
    const began = performance.now();
    for (let i = 0; i < count; i++) {
      const due = began + (i * 1000) / PER_SECOND;
      if (due > performance.now()) await wait(due - performance.now());
      arrived.set(n, due);
      children[n % workers]?.send({ n, message: next(n) });
      n++;
    }
  };
  await arrivals(PER_SECOND * WARM_UP_S);
  counting = true;
  const sizes = [children.reduce((sum, child) => sum + rss_MiB(child), 0)];
  for (let quarter = 0; quarter < 4; quarter++) {
    await arrivals((PER_SECOND * seconds) / 4);
    sizes.push(children.reduce((sum, child) => sum + rss_MiB(child), 0));
  }
  for (let left = 0; left < 100 && arrived.size > 0; left++) await wait(50);
  for (const child of children) {
    const gone = new Promise((resolve) => child.once("exit", resolve));
    child.disconnect();
    await gone;
  }
  const grown = (sizes.at(-1) ?? 0) - (sizes[seconds > 120 ? 2 : 0] ?? 0);
  const good = at(took, 0.99) < WORST_P99_MS && arrived.size === 0 && failed.length === 0 && grown < GROWTH_MIB * workers;
  console.log(`${name}, ${workers} worker${workers > 1 ? "s" : ""}: ${took.length} answers at ${PER_SECOND} a second, ${arrived.size} missing, ${failed.length} failed; p50 ${at(took, 0.5).toFixed(1)} ms, p99 ${at(took, 0.99).toFixed(1)} ms (wanted: ${P99_MS}, limit ${WORST_P99_MS}), most ${at(took, 1).toFixed(0)} ms; memory ${sizes.map((size) => size.toFixed(0)).join(", ")} MiB${good ? "" : "  MISSED"}`);
  if (failed[0]) console.log(failed[0]);
  return good;
}

console.log(`${cpus().length} cores (${cpus()[0]?.model.trim()}), load ${loadavg()[0]?.toFixed(1)}, Node ${process.version}`);
const folder = mkdtempSync(join(tmpdir(), "gleed-load-"));
let good = await run("SQLite", join(folder, "load.sqlite"), 1);
rmSync(folder, { recursive: true, force: true });
const url = process.env.GLEED_TEST_POSTGRES;
if (url) {
  const admin = new pg.Client({ connectionString: url });
  await admin.connect();
  const name = `load_${process.pid}`;
  await admin.query(`create database ${name}`);
  const own = new URL(url);
  own.pathname = `/${name}`;
  good = (await run("PostgreSQL", own.href, 2)) && good;
  await admin.query(`drop database ${name} with (force)`);
  await admin.end();
} else console.log("PostgreSQL: skipped, GLEED_TEST_POSTGRES names none");
process.exit(good ? 0 : 1);
