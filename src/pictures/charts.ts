/** What a picture is drawn from: plain figures in metric units and epoch milliseconds, with their ranges. Kept with the answer, drawn late. */
import { z } from "zod";
import type { Picture, Text } from "../answer.ts";
import { altOf } from "./alt.ts";

const figure = z.number();
const instant = z.number().int();
/** a figure with its honest range; null is "not within what is reckoned" */
const spread = z.strictObject({ low: figure, value: figure, high: figure });
const dates = z.strictObject({ early_ms: instant.nullable(), at_ms: instant.nullable(), late_ms: instant.nullable() });

export const CHARTS = {
  /** one fire: output, face and room after lighting */
  "heat-curve": z.strictObject({
    lit_at_ms: instant,
    bed_black_h: spread,
    peak_output_h: spread,
    series: z.array(z.strictObject({ t_h: figure, output_kW: figure, facing_C: figure, room_C: figure })).min(2),
  }),
  /** the coming days: weather, room in the wanted hours, fires */
  "fire-plan": z.strictObject({
    days: z.array(z.strictObject({ from_ms: instant, to_ms: instant, low_C: figure, high_C: figure })).min(1).max(7),
    fires: z.array(z.strictObject({ lit_at_ms: instant, load_kg: figure })),
    room: z.strictObject({ coldest_C: figure, warmest_C: figure, wanted_C: figure }),
    wood_kg: figure,
  }),
  /** a stack drying towards the limit */
  drying: z.strictObject({
    points: z.array(z.strictObject({ at_ms: instant, pct_wet: figure })).min(2),
    target_pct_wet: figure,
    floor_pct_wet: figure,
    ready: dates,
  }),
  /** the wood that is left, week by week */
  pile: z.strictObject({
    points: z.array(z.strictObject({ at_ms: instant, low_kg: figure, left_kg: figure, high_kg: figure })).min(2),
    ends: dates,
  }),
  /** what was burnt in each week of the season so far */
  season: z.strictObject({
    weeks: z.array(z.strictObject({ from_ms: instant, load_kg: figure, fires: z.number().int() })).min(1).max(60),
  }),
  /** a group's week in coarse bands: how many lie in each, as far as it may be said */
  bands: z.strictObject({
    week_from_ms: instant,
    at_least: z.number().int().nullable(),
    metrics: z.array(z.strictObject({ metric: z.enum(["kg-per-degree-day", "moisture", "black-glass"]), levels: z.array(z.enum(["hidden", "some", "third", "half"])).min(2).max(5) })).min(1).max(3),
  }),
} as const;

export type ChartName = keyof typeof CHARTS;
export type Chart<N extends ChartName> = z.output<(typeof CHARTS)[N]>;

export const isChart = (name: string): name is ChartName => Object.hasOwn(CHARTS, name);

/** A picture and the words that say the same. @throws ZodError for data that is no such chart */
export function pictureOf<N extends ChartName>(name: N, data: Chart<N>): Picture {
  const alt: Text = altOf(name, data);
  return { chart: name, data: CHARTS[name].parse(data), alt };
}
