/** Ten thousand lines of `reckon --batch` in a process of its own, its start included. */
import { spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Line, median } from "./measure.ts";

const LINES = 10_000;
const LIMIT_S = 3;
const ROUNDS = 3;
/** Each is a simulation of days with a line of its own in the table; the formulas share the ten thousand. */
const SIMULATIONS = new Set(["heat-curve", "fire-plan"]);
const GOLDEN = new URL("../contracts/reckon/", import.meta.url);
const RECKON = fileURLToPath(new URL("../../src/reckon.ts", import.meta.url));
/** The process tells its own processor time when it ends. */
const TELLS = `data:text/javascript,${encodeURIComponent('process.on("exit", () => process.stderr.write(JSON.stringify(process.cpuUsage())))')}`;

interface Pair {
  readonly calculator: string;
  readonly inputs: Readonly<Record<string, unknown>>;
}

/** The golden inputs in turn, each figure moved a little so that no two lines are alike. */
function written(): string {
  const pairs = readdirSync(GOLDEN).filter((name) => name.endsWith(".json") && !name.endsWith(".schema.json"))
    .map((name) => JSON.parse(readFileSync(new URL(name, GOLDEN), "utf8")) as Pair)
    .filter(({ calculator }) => !SIMULATIONS.has(calculator));
  return Array.from({ length: LINES }, (_, i) => {
    const { calculator, inputs } = pairs[i % pairs.length]!;
    const moved = Object.fromEntries(Object.entries(inputs).map(([key, value]) => [key, typeof value === "number" ? value * (1 - (i % 97) * 1e-6) : value]));
    return `${JSON.stringify({ calculator, inputs: moved })}\n`;
  }).join("");
}

async function once(input: string): Promise<{ processor_s: number; clock_s: number }> {
  const from = performance.now();
  const child = spawn(process.execPath, ["--import", TELLS, RECKON, "--batch"], { stdio: ["pipe", "pipe", "pipe"] });
  const out: Buffer[] = [];
  let told = "";
  child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
  child.stderr.on("data", (chunk: Buffer) => { told += chunk.toString(); });
  child.stdin.end(input);
  await new Promise((resolve) => child.once("close", resolve));
  const clock_s = (performance.now() - from) / 1000;
  const answers = Buffer.concat(out).toString().split("\n").filter((line) => line.startsWith("{") && !line.startsWith('{"error"')).length;
  if (answers !== LINES) throw new Error(`${answers} of ${LINES} lines were answered without an error`);
  const { user, system } = JSON.parse(told.slice(told.lastIndexOf("{"))) as NodeJS.CpuUsage;
  return { processor_s: (user + system) / 1e6, clock_s };
}

export async function batch(): Promise<Line[]> {
  const input = written();
  const runs: { processor_s: number; clock_s: number }[] = [];
  for (let round = 0; round < ROUNDS; round++) runs.push(await once(input));
  const clock_s = median(runs.map((run) => run.clock_s));
  return [{ what: "10,000 lines of reckon --batch, start included", measured: median(runs.map((run) => run.processor_s)), limit: LIMIT_S, is: "at most", unit: "s", note: `${clock_s.toFixed(1)} s by the clock` }];
}
