/**
 * `node tests/bench/discord.ts [seconds = 60] [interactions for memory = 20000]`: interactions arriving at 50 a second, whether or not the
 * last ones are answered, at Gleed as a service with its records in a file, and at a bare discord.js bot in the same run.
 * Fails when 99 of 100 are not acknowledged within 100 ms and answered within 300 ms, or when memory keeps growing. Memory is looked at
 * after as many interactions again: two heaps and the allocator's arenas fill up to a level first, and stay there.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { ids, type Json, slash } from "../servers/discord/events.ts";
import { type StandIn, standIn, TOKEN, until } from "../servers/discord/index.ts";
import type { Tracked } from "../servers/discord/rest.ts";

const PER_SECOND = 50;
const ACK_MS = 100;
const FINAL_MS = 300;
/** what a heap of a few hundred megabytes may move without growing */
const GROWTH_MIB = 40;
const seconds = Number(process.argv[2] ?? 60);
const many = Number(process.argv[3] ?? 20_000);

const QUESTIONS = ["how much wood tonight? low of -7", "why did my glass go black last night?", "can I close the damper now?", "how much heat is in 12 kg of birch at 18 %?", "show my fires", "is 22 % dry basis dry enough?"];
const someone = (at: number): { user: string; guild: string } => ({ user: `7${String(at % 300).padStart(17, "0")}`, guild: ids.guild });
function interaction(at: number): Json {
  const kinds = [() => slash("ask", { question: QUESTIONS[at % QUESTIONS.length] }, someone(at)), () => slash("help", {}, someone(at)), () => slash("close", {}, someone(at)), () => slash("log", { load: "9", species: "birch", moisture: "17" }, someone(at))];
  return (kinds[at % kinds.length] ?? kinds[0])?.() ?? {};
}

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const rss_MiB = (child: ChildProcess): number => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, "utf8"))?.[1] ?? 0) / 1024;
const at = (list: readonly number[], share: number): number => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * share))] ?? Number.NaN;

async function paced(server: StandIn, count: number): Promise<Tracked[]> {
  const all: Tracked[] = [];
  const from = performance.now();
  for (let i = 0; i < count; i++) {
    const due = from + (i * 1000) / PER_SECOND;
    if (due > performance.now()) await wait(due - performance.now());
    const one = server.interact(interaction(i));
    if (one) all.push(one);
  }
  await until("every answer", () => all.every((one) => one.answered_ms !== null), 15_000).catch(() => {});
  return all;
}

interface Figures {
  readonly ack_p99: number;
  readonly final_p99: number;
  readonly unanswered: number;
}
function report(name: string, all: readonly Tracked[]): Figures {
  const acks = all.map((one) => (one.acknowledged_ms ?? Number.POSITIVE_INFINITY) - one.dispatched_ms);
  const finals = all.map((one) => (one.answered_ms ?? Number.POSITIVE_INFINITY) - one.dispatched_ms);
  const unanswered = all.filter((one) => one.answered_ms === null).length;
  const ms = (value: number): string => value.toFixed(1).padStart(7);
  console.log(`${name.padEnd(18)} ${all.length} arrived, ${unanswered} unanswered; acknowledged p50 ${ms(at(acks, 0.5))} p99 ${ms(at(acks, 0.99))} ms; answered p50 ${ms(at(finals, 0.5))} p99 ${ms(at(finals, 0.99))} ms`);
  return { ack_p99: at(acks, 0.99), final_p99: at(finals, 0.99), unanswered };
}

async function withBot<T>(entry: string, work: (server: StandIn, child: ChildProcess) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "gleed-bench-discord-"));
  const server = await standIn({ unchecked: true });
  const child = spawn(process.execPath, [fileURLToPath(new URL(entry, import.meta.url))], { env: { ...process.env, HOME: folder, XDG_DATA_HOME: folder, GLEED_DATABASE: join(folder, "gleed.sqlite"), GLEED_DISCORD_TOKEN: TOKEN, GLEED_DISCORD_API: server.api }, stdio: ["ignore", "inherit", "ignore"] });
  try {
    await until("the login", () => server.gateway.sessions.at(-1)?.socket, 20_000);
    await wait(1_500);
    for (let i = 0; i < 50; i++) server.interact(interaction(i));
    await wait(2_000);
    return await work(server, child);
  } finally {
    child.kill("SIGTERM");
    await new Promise((resolve) => child.once("exit", resolve));
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** As fast as they are answered, a few at a time. */
async function memory(server: StandIn, child: ChildProcess): Promise<number[]> {
  const sizes: number[] = [];
  const ABREAST = 8;
  for (let done = -many; done < many; done += ABREAST) {
    if (done >= 0 && sizes.length === 0) sizes.push(rss_MiB(child));
    const batch = Array.from({ length: ABREAST }, (_, i) => server.interact(interaction(done + many + i)));
    await until("a batch", () => batch.every((one) => one?.answered_ms !== null), 15_000);
    server.forget();
    if (done >= 0 && (done + ABREAST) % (many / 4) < ABREAST) sizes.push(rss_MiB(child));
  }
  return sizes;
}

console.log(`${cpus().length} cores (${cpus()[0]?.model.trim()}), load ${loadavg()[0]?.toFixed(1)}, Node ${process.version}; ${PER_SECOND} a second for ${seconds} s`);
const echo = await withBot("./discord-echo.ts", async (server) => report("bare discord.js", await paced(server, PER_SECOND * seconds)));
const { figures, sizes } = await withBot("../../src/main.ts", async (server, child) => ({ figures: report("Gleed", await paced(server, PER_SECOND * seconds)), sizes: many > 0 ? await memory(server, child) : [] }));
console.log(`memory of the process over ${many} interactions, after ${many} before: ${sizes.map((size) => size.toFixed(0)).join(", ")} MiB`);
console.log(`Gleed against the bare bot: acknowledged +${(figures.ack_p99 - echo.ack_p99).toFixed(1)} ms at p99 (limits: ${ACK_MS} and ${FINAL_MS} ms); load now ${loadavg()[0]?.toFixed(1)}`);
const grown = (sizes.at(-1) ?? 0) - (sizes[0] ?? 0);
if (figures.ack_p99 > ACK_MS || figures.final_p99 > FINAL_MS || figures.unanswered > 0 || grown > GROWTH_MIB) process.exit(1);
