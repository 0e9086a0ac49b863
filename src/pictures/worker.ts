/** The drawing thread: specification to SVG to PNG. Keeps the compiled plates, the fonts and the texts warm. */
import { fileURLToPath } from "node:url";
import { parentPort } from "node:worker_threads";
import { Resvg } from "@resvg/resvg-js";
import * as vega from "vega";
import { compile, type TopLevelSpec } from "vega-lite";
import type { Picture } from "../answer.ts";
import { calls } from "../core/calls.ts";
import { loadCatalogues } from "../text/catalogues.ts";
import { renderer, type Reader, type Renderer } from "../text/render.ts";
import { CHARTS, isChart, type ChartName } from "./charts.ts";
import { FONT, SCALE, WIDTH_PX } from "./look.ts";
import { PAGE, pageSvg } from "./page.ts";
import { PLATES } from "./plates/index.ts";
import type { Filled, Plate } from "./plates/plate.ts";

/** The fonts that came along, and none of the machine's: a picture looks the same everywhere. */
export const FONTS = {
  loadSystemFonts: false,
  fontFiles: ["regular.ttf", "semibold.ttf"].map((name) => fileURLToPath(new URL(`./fonts/${name}`, import.meta.url))),
  defaultFontFamily: FONT,
};

/** One view a plate, filled anew for each picture: compiling costs more than all the rest. */
const views = new Map<ChartName, vega.View>();
function viewOf(name: ChartName): vega.View {
  let view = views.get(name);
  if (!view) {
    view = new vega.View(vega.parse(compile(PLATES[name].spec as TopLevelSpec).spec), { renderer: "none", logLevel: vega.Error });
    views.set(name, view);
  }
  return view;
}

/** @throws RangeError for a chart nobody draws, ZodError for data that is no such chart */
export async function svgOf(picture: Pick<Picture, "chart" | "data">, reader: Reader, render: Renderer): Promise<string> {
  const { chart: name, data } = picture;
  if (name === PAGE) return pageSvg(data, { reader, write: (text) => render(text, reader) });
  if (!isChart(name)) throw new RangeError(`"${name}" is not a chart; it should be one of ${Object.keys(CHARTS).join(", ")}.`);
  const plate = PLATES[name] as Plate<ChartName>;
  const { data: sets, ...frame }: Filled = plate.fill(CHARTS[name].parse(data), { reader, write: (text) => render(text, reader) });
  const view = viewOf(name).signal("frame", frame);
  for (const [set, rows] of Object.entries(sets)) view.data(set, [...rows]);
  view.run();
  return view.toSVG();
}

export const pngOf = (svg: string): Uint8Array =>
  new Resvg(svg, { fitTo: { mode: "width", value: WIDTH_PX * SCALE }, font: FONTS }).render().asPng();

if (parentPort) {
  const render = loadCatalogues().then(renderer);
  calls(parentPort, {
    draw: async (picture: Picture, reader: Reader) => pngOf(await svgOf(picture, reader, await render)),
  });
}
