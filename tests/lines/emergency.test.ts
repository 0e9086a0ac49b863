/** Danger is answered from the process that reads the line, whatever has become of records and knowledge: under 50 ms, and in order. */
import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type Server, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startLines, type LinesProcess } from "./process.ts";

const DANGERS = [
  "the co alarm is going off", "everyone has a headache since the fire", "chimney fire! roaring and sparks out the top", "the room is filling with smoke",
  "i put hot ash in a cardboard box on the porch and it glows", "burnt my hand on the door", "i shut the damper while it still glowed", "big bang and the door flew open, flames in the room",
];
const LIMIT_MS = 50;
/** the machine running the tests may stumble; the hundredth slowest of the answers may not */
const ROUNDS = 25;

let folder: string;
let hole: Server;
let port: number;
const sockets: Socket[] = [];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gleed-"));
  hole = createServer((socket) => void sockets.push(socket));
  await new Promise<void>((resolve) => hole.listen(0, "127.0.0.1", resolve));
  port = (hole.address() as { port: number }).port;
});
afterAll(() => {
  for (const socket of sockets) socket.destroy();
  hole.close();
  rmSync(folder, { recursive: true, force: true });
});

/** each way for things to be broken: environment, and what to clean up */
const BROKEN: readonly { name: string; env: () => Record<string, string>; after?: () => void }[] = [
  { name: "all well", env: () => ({}) },
  { name: "a database file that is no database", env: () => { const file = join(folder, "noise.sqlite"); writeFileSync(file, "this is not a database, and long enough to be looked at as one ".repeat(20)); return { GLEED_DATABASE: file }; } },
  { name: "a database in a folder that cannot be", env: () => { const file = join(folder, "plain"); writeFileSync(file, ""); return { GLEED_DATABASE: join(file, "gleed.sqlite") }; } },
  { name: "a database that hangs on opening", env: () => { const pipe = join(folder, "pipe.sqlite"); execFileSync("mkfifo", [pipe]); return { GLEED_DATABASE: pipe }; } },
  { name: "PostgreSQL that takes the call and says nothing", env: () => ({ GLEED_DATABASE: `postgres://gleed@127.0.0.1:${port}/gleed` }) },
  { name: "PostgreSQL that is not there", env: () => ({ GLEED_DATABASE: "postgres://gleed@127.0.0.1:1/gleed" }) },
  { name: "no knowledge", env: () => ({ GLEED_KNOWLEDGE: join(folder, "nothing-here") }) },
  { name: "knowledge that hangs", env: () => { const where = join(folder, "slow"); mkdirSync(where); execFileSync("mkfifo", [join(where, "cautions.yaml")]); return { GLEED_KNOWLEDGE: where }; } },
];

const p99 = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[Math.ceil(times.length * 0.99) - 1] ?? 0;

async function warm(lines: LinesProcess): Promise<number> {
  const { ms } = await lines.ask({ person: "first", room: "private", text: DANGERS[0] });
  return ms;
}

describe("emergencies while lines runs", () => {
  for (const { name, env } of BROKEN) {
    it(`with ${name}: 99 of 100 under ${LIMIT_MS} ms`, async () => {
      const lines = startLines(env());
      try {
        const cold_ms = await warm(lines);
        const times: number[] = [];
        for (let i = 0; i < ROUNDS; i++) {
          for (const text of DANGERS) {
            const { value, ms } = await lines.ask({ person: `p${i}`, room: "private", text });
            const [answer] = value.answers;
            expect(answer.emergency, text).toBe(true);
            expect(answer.cautions.length).toBeGreaterThan(0);
            expect(answer.text).toContain("112 in Europe");
            times.push(ms);
          }
        }
        console.log(`${name}: p99 ${p99(times).toFixed(1)} ms, worst ${Math.max(...times).toFixed(1)} ms, cold start ${cold_ms.toFixed(0)} ms`);
        expect(p99(times)).toBeLessThan(LIMIT_MS);
      } finally {
        await lines.kill();
      }
    }, 60_000);
  }

  it("with the database locked by somebody else", async () => {
    const file = join(folder, "locked.sqlite");
    const first = startLines({ GLEED_DATABASE: file });
    await first.ask({ person: "a", room: "private", text: "help" });
    await first.end();
    const locker = spawn(process.execPath, ["-e", `const D=require("better-sqlite3");const d=new D(${JSON.stringify(file)});d.exec("begin exclusive");console.log("locked");setTimeout(()=>{},60000)`], { stdio: ["ignore", "pipe", "inherit"] });
    await new Promise((resolve) => locker.stdout.once("data", resolve));
    const lines = startLines({ GLEED_DATABASE: file });
    try {
      await warm(lines);
      const times: number[] = [];
      for (let i = 0; i < 100; i++) times.push((await lines.ask({ person: "a", room: "private", text: DANGERS[i % DANGERS.length] })).ms);
      expect(p99(times)).toBeLessThan(LIMIT_MS);
    } finally {
      await lines.kill();
      locker.kill("SIGKILL");
    }
  }, 60_000);

  it("an ordinary line that waits in front gets its sentence, and the order holds", async () => {
    const lines = startLines({ GLEED_DATABASE: `postgres://gleed@127.0.0.1:${port}/gleed` });
    try {
      await warm(lines);
      lines.put({ person: "a", room: "private", text: "how much wood tonight?" });
      lines.put({ person: "a", room: "private", text: "the co alarm is going off" });
      const first = await lines.next();
      const second = await lines.next();
      expect(first.value.error).toMatch(/records do not answer/);
      expect(second.value.answers[0].emergency).toBe(true);
      const times: number[] = [];
      for (let i = 0; i < 20; i++) times.push((await lines.ask({ person: "a", room: "private", text: "the co alarm is going off" })).ms);
      expect(times.sort((a, b) => a - b)[10]).toBeLessThan(LIMIT_MS);
    } finally {
      await lines.kill();
    }
  }, 60_000);

  it("an emergency in the middle of a piped conversation costs no other line its answer", async () => {
    const lines = startLines();
    const all = ["help", "is 26% ok", "the co alarm is going off", "why did my glass go black?", "show my fires"];
    for (const text of all) lines.put({ person: "a", room: "private", text });
    const replies = [];
    for (const _ of all) replies.push((await lines.next()).value);
    expect(replies.map((reply) => reply.answers?.[0]?.emergency ?? reply.error)).toEqual([false, false, true, false, false]);
    expect(await lines.end()).toBe(0);
  }, 60_000);
});
