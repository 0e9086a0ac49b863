/** `npm run bench`: what an answer costs in the core, on a real file with a thousand fires on record. Fails when it costs too much. */
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { dice } from "../../demo/winters.ts";
import { openTalk } from "../support/talk.ts";

const MEDIAN_LIMIT_MS = 5;
const ROUNDS = 60;
const QUESTIONS = [
  "how much wood tonight? low of -7", "why did my glass go black last night?", "can I close the damper now?", "is 22% dry basis dry enough?", "show my fires", "small blue flames",
  "log: 11 kg birch 17% lit 18:10", "how much heat is in 12 kg of birch", "help", "tell me about the football",
];

const folder = mkdtempSync(join(tmpdir(), "gleed-bench-"));
const roll = dice(1);
const talk = await openTalk({ database: join(folder, "bench.sqlite") });
const fires = Array.from({ length: 1000 }, (_, i) => {
  const lit = Date.parse("2026-11-24T18:00:00Z") - i * 20 * 3_600_000;
  return { lit_at: new Date(lit).toISOString(), load_kg: 8 + Math.round(roll() * 10) / 2, moisture_pct_wet: 15 + Math.round(roll() * 60) / 10, air: "open", outside_C: -3 };
});
await talk.records("owner", { heater: { kind: "bell", max_load_kg: 14, max_load_source: "sheet", shut_off_damper: true, gas_exit: "top" }, house: { heat_loss_W_per_K: 170 }, fires });

const times: number[] = [];
const by = new Map<string, number[]>();
for (let round = 0; round < ROUNDS; round++) {
  for (const question of QUESTIONS) {
    const from = performance.now();
    await talk.say("owner", question);
    const ms = performance.now() - from;
    if (round < 3) continue;
    times.push(ms);
    by.set(question, [...(by.get(question) ?? []), ms]);
  }
}
await talk.close();
rmSync(folder, { recursive: true, force: true });

const at = (list: readonly number[], share: number): number => [...list].sort((a, b) => a - b)[Math.floor(list.length * share)] ?? 0;
console.log(`${cpus().length} cores (${cpus()[0]?.model.trim()}), load ${loadavg()[0]?.toFixed(1)}, Node ${process.version}; SQLite file, synchronous FULL, 1,000 fires on record`);
for (const [question, list] of by) console.log(`  ${at(list, 0.5).toFixed(2).padStart(7)} ms median ${at(list, 0.99).toFixed(1).padStart(7)} ms p99  ${question}`);
console.log(`an answer from words to commit: median ${at(times, 0.5).toFixed(2)} ms, p99 ${at(times, 0.99).toFixed(1)} ms (limit: median ${MEDIAN_LIMIT_MS} ms)`);
if (at(times, 0.5) > MEDIAN_LIMIT_MS) process.exit(1);
