/** What a picture costs over its raster alone. */
import { draw, stopDrawing } from "../../src/pictures/draw.ts";
import { pictureOf } from "../../src/pictures/charts.ts";
import { pngOf, svgOf } from "../../src/pictures/worker.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Reader } from "../../src/text/render.ts";
import { NAMES, SAMPLES } from "../pictures/charts.ts";
import { inTurns, type Line } from "./measure.ts";

const LIMIT = 1.3;
const ROUNDS = 41;
/** The drawing thread compiles its plates and what it runs often. */
const WARM_UP = 25;

const reader: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };

export async function pictures(): Promise<Line[]> {
  const render = renderer(await loadCatalogues());
  const lines: Line[] = [];
  for (const name of NAMES) {
    const picture = pictureOf(name, SAMPLES[name] as never);
    const svg = await svgOf(picture, reader, render);
    const { first_ms, second_ms, ratio } = await inTurns(ROUNDS, () => pngOf(svg), () => draw(picture, reader, 60_000), WARM_UP);
    lines.push({ what: `picture over its raster alone: ${name}`, measured: ratio, limit: LIMIT, is: "at most", unit: "x", note: `${second_ms.toFixed(1)} against ${first_ms.toFixed(1)} ms` });
  }
  await stopDrawing();
  return lines;
}
