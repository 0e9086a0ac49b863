/** What a picture costs over its raster alone, in one run. Fails above the limit. `node tests/bench/pictures.ts` */
import { draw, stopDrawing } from "../../src/pictures/draw.ts";
import { pictureOf } from "../../src/pictures/charts.ts";
import { pngOf, svgOf } from "../../src/pictures/worker.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Reader } from "../../src/text/render.ts";
import { NAMES, SAMPLES } from "../pictures/charts.ts";

const LIMIT = 1.3;
const ROUNDS = 40;
const WARM_UP = 6;

const reader: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
const render = renderer(await loadCatalogues());
/** What the work costs when nothing else takes the processor: the lower quartile. */
const usual = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 4)] ?? 0;
async function timed(work: () => unknown): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

let worst = 0;
for (const name of NAMES) {
  const picture = pictureOf(name, SAMPLES[name] as never);
  const svg = await svgOf(picture, reader, render);
  const raster: number[] = [];
  const whole: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const rasterOnly = await timed(() => pngOf(svg));
    const drawn = await timed(() => draw(picture, reader, 60_000));
    if (round < WARM_UP) continue;
    raster.push(rasterOnly);
    whole.push(drawn);
  }
  const ratio = usual(whole) / usual(raster);
  worst = Math.max(worst, ratio);
  console.log(`${name.padEnd(12)} raster ${usual(raster).toFixed(1).padStart(6)} ms, picture ${usual(whole).toFixed(1).padStart(6)} ms: ${ratio.toFixed(2)} x`);
}
await stopDrawing();
console.log(`a picture over its raster alone: at worst ${worst.toFixed(2)} x (limit ${LIMIT} x)`);
if (worst > LIMIT) process.exitCode = 1;
