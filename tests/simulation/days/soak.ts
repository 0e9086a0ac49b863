/** `npm run soak -- days [seeds] [days] [first seed]`: 10,000 seeds of 100 days when not said. Prints what it found, ends with 1 when a promise was broken. */
import { months } from "./world.ts";

const [seeds = 10_000, days = 100, first = 1] = process.argv.slice(2).map(Number);
const started = performance.now();
let broken = 0;
for (let seed = first; seed < first + seeds; seed += 1) {
  const found = await months(seed, days);
  broken += found.length;
  for (const one of found) console.log(`seed ${seed}: ${one}`);
  if ((seed - first + 1) % 100 === 0) console.error(`${seed - first + 1} seeds, ${broken} broken, ${Math.round((performance.now() - started) / 1000)} s`);
}
console.log(`${new Date().toISOString().slice(0, 10)}: ${seeds} seeds of ${days} days, ${seeds * days} simulated days, ${broken} broken promises, ${Math.round((performance.now() - started) / 1000)} s`);
process.exitCode = broken === 0 ? 0 : 1;
