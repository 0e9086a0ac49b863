/** What a picture costs over its raster alone, in one run. Fails above the limit. `node tests/bench/pictures.ts` */
import { draw, stopDrawing } from "../../src/pictures/draw.ts";
import { pictureOf } from "../../src/pictures/charts.ts";
import { pngOf, svgOf } from "../../src/pictures/worker.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Reader } from "../../src/text/render.ts";
import { NAMES, SAMPLES } from "../pictures/charts.ts";

const LIMIT = 1.3;
const ROUNDS = 30;
const WARM_UP = 25;

const reader: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
const render = renderer(await loadCatalogues());
/** Processor time of all threads, ms: what work costs, whoever else is at work on this machine. */
async function cost(work: () => unknown): Promise<{ cpu_ms: number; wall_ms: number }> {
  const from = { cpu: process.cpuUsage(), wall: performance.now() };
  for (let round = 0; round < ROUNDS; round++) await work();
  const { user, system } = process.cpuUsage(from.cpu);
  return { cpu_ms: (user + system) / 1000 / ROUNDS, wall_ms: (performance.now() - from.wall) / ROUNDS };
}

let worst = 0;
for (const name of NAMES) {
  const picture = pictureOf(name, SAMPLES[name] as never);
  const svg = await svgOf(picture, reader, render);
  for (let round = 0; round < WARM_UP; round++) await draw(picture, reader, 60_000);
  pngOf(svg);
  const raster = await cost(() => pngOf(svg));
  const whole = await cost(() => draw(picture, reader, 60_000));
  const ratio = whole.cpu_ms / raster.cpu_ms;
  worst = Math.max(worst, ratio);
  console.log(`${name.padEnd(12)} raster ${raster.cpu_ms.toFixed(1).padStart(6)} ms, picture ${whole.cpu_ms.toFixed(1).padStart(6)} ms: ${ratio.toFixed(2)} x  (by the clock ${raster.wall_ms.toFixed(0)} and ${whole.wall_ms.toFixed(0)} ms)`);
}
await stopDrawing();
console.log(`a picture over its raster alone, in processor time: at worst ${worst.toFixed(2)} x (limit ${LIMIT} x)`);
if (worst > LIMIT) process.exitCode = 1;
