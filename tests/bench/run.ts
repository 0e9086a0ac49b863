/** `npm run bench`: what everything costs, in one run, each figure held against its limit. Ends 1 when one is missed. */
import { cpus, loadavg } from "node:os";
import { answers } from "./answers.ts";
import { batch } from "./batch.ts";
import { heaterModel } from "./heater.ts";
import { holds, type Line } from "./measure.ts";
import { pictures } from "./pictures.ts";
import { routing } from "./routing.ts";

const from = performance.now();
console.log(`${cpus().length} cores (${cpus()[0]?.model.trim()}), load ${loadavg()[0]?.toFixed(1)}, Node ${process.version}; processor time, medians of works that take turns`);
console.log(`${"".padEnd(9)}${"measured".padStart(10)}${"limit".padStart(11)}`);

let [held, missed, skipped] = [0, 0, 0];
const show = (line: Line): void => {
  const verdict = line.measured === null ? "skipped" : holds(line) ? "ok" : "MISSED";
  if (verdict === "ok") held++;
  else if (verdict === "skipped") skipped++;
  else missed++;
  const digits = line.unit === "ms" && (line.measured ?? 0) >= 10 ? 0 : 2;
  const measured = line.measured === null ? "-" : `${line.measured.toFixed(digits)} ${line.unit}`;
  const limit = `${line.is === "at most" ? "<=" : ">="} ${line.limit} ${line.unit}`;
  console.log(`${verdict.padEnd(9)}${measured.padStart(10)}${limit.padStart(11)}  ${line.what}${line.note ? ` (${line.note})` : ""}`);
};
for (const part of [heaterModel, batch, pictures, routing, answers]) for (const line of await part()) show(line);
console.log(`${held} held, ${missed} missed, ${skipped} skipped; ${((performance.now() - from) / 1000).toFixed(0)} s`);
if (missed > 0) process.exitCode = 1;
