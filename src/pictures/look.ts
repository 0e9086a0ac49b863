/** How every picture looks: one opaque paper tone that reads on light and dark screens, hues that stay apart for every kind of sight. */
import type { Config } from "vega-lite";

/** Size on a phone, CSS pixels; drawn at twice that. */
export const WIDTH_PX = 400;
export const SCALE = 2;
/** Nothing is written smaller, CSS pixels. */
export const SMALLEST_PX = 12;

export const FONT = "Source Sans 3";
export const STRONG_FONT = "Source Sans 3 SemiBold";

/** Told apart by lightness and by line as well as by hue. */
export const INK = {
  paper: "#fbf9f5", text: "#23272c", quiet: "#5a6068", grid: "#e4dfd5",
  face: "#b5400f", room: "#17549c", outside: "#8fa6bd", outsideText: "#4c6178",
  heat: "#eeb04e", heatText: "#7c5000", fire: "#7a2c12", wood: "#8a6a3f", woodRange: "#d9c7a8", limit: "#0b6b57",
} as const;

export const CONFIG: Config = {
  background: INK.paper,
  font: FONT,
  view: { stroke: null },
  axis: {
    title: null, labelFont: FONT, labelFontSize: 12, labelColor: INK.quiet, labelPadding: 4, gridColor: INK.grid, domain: false, ticks: false, labelBound: false, labelOverlap: false,
  },
  axisX: { domain: true, domainColor: INK.quiet, ticks: true, tickColor: INK.quiet, tickSize: 4, grid: false },
  text: { font: FONT, fontSize: 12, color: INK.text },
};
