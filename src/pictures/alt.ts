/** The words of a picture: whoever cannot see it reads the same figures, in their own units. */
import { text, type Text } from "../answer.ts";
import { q, type Quantity, type UnitId } from "../quantities.ts";
import type { Chart, ChartName } from "./charts.ts";

type Alts = { readonly [N in ChartName]: (chart: Chart<N>) => Text };

const ranged = ({ low, value, high }: { low: number; value: number; high: number }, unit: UnitId, digits: number): Quantity => q(value, unit, { low, high, digits });
const date = (at_ms: number) => ({ at_ms, show: "date" }) as const;

const ALTS: Alts = {
  "heat-curve": ({ series, peak_output_h, bed_black_h, lit_at_ms }) => {
    const most = (key: "output_kW" | "facing_C" | "room_C"): number => Math.max(...series.map((point) => point[key]));
    return text("picture.heat-curve.alt", {
      lit: { at_ms: lit_at_ms, show: "day-time" },
      peak: ranged(peak_output_h, "h", 1),
      output: q(most("output_kW"), "kW", { digits: 1 }),
      face: q(most("facing_C"), "C"),
      low: q(Math.min(...series.map((point) => point.room_C)), "C", { digits: 1 }),
      high: q(most("room_C"), "C", { digits: 1 }),
      black: ranged(bed_black_h, "h", 1),
    });
  },
  "fire-plan": ({ days, fires, room, wood_kg }) =>
    text(fires.length === 0 ? "picture.fire-plan.alt-none" : "picture.fire-plan.alt", {
      days: days.length,
      low: q(Math.min(...days.map((day) => day.low_C)), "C"),
      high: q(Math.max(...days.map((day) => day.high_C)), "C"),
      fires: fires.map((fire) => text("picture.fire-plan.fire", { at: { at_ms: fire.lit_at_ms, show: "day-time" }, load: q(fire.load_kg, "kg", { digits: 1 }) })),
      wood: q(wood_kg, "kg", { digits: 0 }),
      coldest: q(room.coldest_C, "C", { digits: 1 }),
      warmest: q(room.warmest_C, "C", { digits: 1 }),
      wanted: q(room.wanted_C, "C"),
    }),
  drying: ({ points, target_pct_wet, floor_pct_wet, ready }) => {
    const { early_ms, at_ms, late_ms } = ready;
    const first = points[0]!;
    const base = {
      from: date(first.at_ms), start: q(first.pct_wet, "pct"), target: q(target_pct_wet, "pct"), floor: q(floor_pct_wet, "pct"),
      last: q(points.at(-1)!.pct_wet, "pct"), end: date(points.at(-1)!.at_ms),
    };
    if (at_ms === null || early_ms === null) return text("picture.drying.alt-never", base);
    const some = { ...base, at: date(at_ms), early: date(early_ms) };
    return late_ms === null ? text("picture.drying.alt-open", some) : text("picture.drying.alt", { ...some, late: date(late_ms) });
  },
  pile: ({ points, ends }) => {
    const first = points[0]!;
    const last = points.at(-1)!;
    const base = { from: date(first.at_ms), now: q(first.left_kg, "kg", { digits: 0 }), until: date(last.at_ms), left: q(last.left_kg, "kg", { digits: 0 }) };
    if (ends.at_ms === null) return ends.early_ms === null ? text("picture.pile.alt-lasts", base) : text("picture.pile.alt-maybe", { ...base, early: date(ends.early_ms) });
    const some = { ...base, at: date(ends.at_ms), early: date(ends.early_ms ?? ends.at_ms) };
    return ends.late_ms === null ? text("picture.pile.alt-open", some) : text("picture.pile.alt", { ...some, late: date(ends.late_ms) });
  },
  season: ({ weeks }) => {
    const heaviest = weeks.reduce((most, week) => (week.load_kg > most.load_kg ? week : most));
    return text("picture.season.alt", {
      wood: q(weeks.reduce((sum, week) => sum + week.load_kg, 0), "kg", { digits: 0 }),
      fires: weeks.reduce((sum, week) => sum + week.fires, 0),
      weeks: weeks.length,
      most: q(heaviest.load_kg, "kg", { digits: 0 }),
      week: date(heaviest.from_ms),
    });
  },
  bands: ({ week_from_ms, metrics }) => {
    const told = metrics.flatMap(({ metric, levels }) =>
      levels.flatMap((level, band) => (level === "hidden" ? [] : [text("picture.bands.one", { metric: text(`winter.metric.${metric}`), band: text(`winter.band.${metric}.${band}`), level: text(`winter.level.${level}`) })])),
    );
    return told.length > 0 ? text("picture.bands.alt", { week: date(week_from_ms), told }) : text("picture.bands.alt-none", { week: date(week_from_ms) });
  },
};

export const altOf = <N extends ChartName>(name: N, chart: Chart<N>): Text => (ALTS[name] as (chart: Chart<N>) => Text)(chart);
