/** What an answer costs in the core, from words to commit, on a real file with a thousand fires on record. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { dice } from "../../demo/winters.ts";
import { openTalk } from "../support/talk.ts";
import { cost_ms, type Line, median } from "./measure.ts";

const MEDIAN_LIMIT_MS = 5;
const ROUNDS = 60;
const WARM_UP = 3;
const QUESTIONS = [
  "how much wood tonight? low of -7", "why did my glass go black last night?", "can I close the damper now?", "is 22% dry basis dry enough?", "show my fires", "small blue flames",
  "log: 11 kg birch 17% lit 18:10", "how much heat is in 12 kg of birch", "help", "tell me about the football",
];

export async function answers(): Promise<Line[]> {
  const folder = mkdtempSync(join(tmpdir(), "gleed-bench-"));
  const roll = dice(1);
  const talk = await openTalk({ database: join(folder, "bench.sqlite") });
  const fires = Array.from({ length: 1000 }, (_, i) => {
    const lit = Date.parse("2026-11-24T18:00:00Z") - i * 20 * 3_600_000;
    return { lit_at: new Date(lit).toISOString(), load_kg: 8 + Math.round(roll() * 10) / 2, moisture_pct_wet: 15 + Math.round(roll() * 60) / 10, air: "open", outside_C: -3 };
  });
  await talk.records("owner", { heater: { kind: "bell", max_load_kg: 14, max_load_source: "sheet", shut_off_damper: true, gas_exit: "top" }, house: { heat_loss_W_per_K: 170 }, fires });

  const clock_ms: number[] = [];
  const by = new Map<string, number[]>(QUESTIONS.map((question) => [question, []]));
  for (let round = 0; round < ROUNDS; round++) {
    for (const question of QUESTIONS) {
      const from = performance.now();
      const ms = await cost_ms(() => talk.say("owner", question));
      if (round < WARM_UP) continue;
      by.get(question)?.push(ms);
      clock_ms.push(performance.now() - from);
    }
  }
  await talk.close();
  rmSync(folder, { recursive: true, force: true });
  const times = [...by.values()].flat();
  const slowest = [...by].map(([question, list]) => ({ question, ms: median(list) })).reduce((most, one) => (one.ms > most.ms ? one : most));
  return [{ what: "answer, from words to commit (SQLite file, synchronous)", measured: median(times), limit: MEDIAN_LIMIT_MS, is: "at most", unit: "ms", note: `by the clock ${median(clock_ms).toFixed(1)} ms; slowest median ${slowest.ms.toFixed(1)} ms, "${slowest.question}"` }];
}
