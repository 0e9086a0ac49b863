/**
 * A plate is one kind of picture: a Vega-Lite specification that never changes, and what fills it: data sets by name, and the `frame`
 * with title, axes and ticks. As the specification stays, it is compiled once and drawn from many times.
 */
import type { Text } from "../../answer.ts";
import type { Reader } from "../../text/render.ts";
import type { Chart, ChartName } from "../charts.ts";
import { CONFIG, INK, STRONG_FONT, WIDTH_PX } from "../look.ts";
import type { Ticks } from "../scale.ts";

export type Row = Readonly<Record<string, unknown>>;

export interface Axis {
  readonly low: number;
  readonly high: number;
  readonly ticks: Ticks;
}
export interface Filled {
  readonly title: string;
  readonly subtitle: string;
  readonly x: Axis;
  readonly y: Axis;
  /** a second upright axis, for plates that have one */
  readonly y2?: Axis;
  readonly data: Readonly<Record<string, readonly Row[]>>;
}
/** What a plate writes with: the reader's words, units, clock. */
export interface Pen {
  readonly reader: Reader;
  write(text: Text): string;
}
export interface Plate<N extends ChartName> {
  readonly spec: object;
  fill(chart: Chart<N>, pen: Pen): Filled;
}

const EDGE_PX = 12;
const PADDING = { left: 38, right: 12, top: 52, bottom: 26 };

const heading = (words: string, y: number, look: object): object => ({
  data: { values: [{}] },
  mark: { type: "text", text: { expr: words }, x: EDGE_PX - PADDING.left, y, align: "left", baseline: "middle", ...look },
});

/** The sheet all plates are drawn on. @param height_px of the whole picture */
export const sheet = (height_px: number, layer: readonly object[], more: object = {}): object => ({
  width: WIDTH_PX - PADDING.left - PADDING.right,
  height: height_px - PADDING.top - PADDING.bottom,
  padding: PADDING,
  autosize: { type: "none" },
  config: CONFIG,
  params: [{ name: "frame", value: { title: "", subtitle: "", x: {}, y: {}, y2: {} } }],
  layer: [...layer, heading("frame.title", -39, { font: STRONG_FONT, fontSize: 15, color: INK.text }), heading("frame.subtitle", -20, { fontSize: 13, color: INK.quiet })],
  ...more,
});

const axis = (name: "x" | "y" | "y2") => ({
  scale: { domain: [{ expr: `frame.${name}.low` }, { expr: `frame.${name}.high` }], nice: false, zero: false },
  axis: { values: { expr: `frame.${name}.ticks.values` }, labelExpr: `frame.${name}.ticks.labels[datum.value]` },
});
export const along = (field = "x") => ({ x: { field, type: "quantitative", ...axis("x") } });
export const up = (field = "y", name: "y" | "y2" = "y") => ({ y: { field, type: "quantitative", ...axis(name) } });
export const reach = (channel: "x2" | "y2", field: string) => ({ [channel]: { field } });

/** Words on the plot, each with a halo of paper; rows of `notes`: x, y, text, ink, and where they stand. */
export const notes = (): object[] =>
  [{ stroke: INK.paper, strokeWidth: 4, strokeJoin: "round" }, {}].map((halo) => ({
    data: { name: "notes" },
    mark: { type: "text", align: { expr: "datum.align" }, baseline: { expr: "datum.baseline" }, dx: { expr: "datum.dx" }, dy: { expr: "datum.dy" }, color: { expr: "datum.ink" }, ...halo },
    encoding: { ...along(), ...up(), text: { field: "text", type: "nominal" } },
  }));

export interface NoteStyle {
  readonly align?: "left" | "center" | "right";
  readonly baseline?: "top" | "middle" | "bottom";
  readonly dx?: number;
  readonly dy?: number;
}
export const note = (x: number, y: number, text: string, ink: string, { align = "left", baseline = "middle", dx = 0, dy = 0 }: NoteStyle = {}): Row => ({ x, y, text, ink, align, baseline, dx, dy });
