/** A stack drying: the likely course, the limit, the driest its air can make it, and from when to when it may be ready. */
import { text, type Text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import type { Chart } from "../charts.ts";
import { INK } from "../look.ts";
import { monthTicks, ticks } from "../scale.ts";
import { along, note, notes, reach, sheet, up, type Plate } from "./plate.ts";

const spec = sheet(270, [
  { data: { name: "limits" }, mark: { type: "rule", strokeWidth: 2, color: { expr: "datum.ink" }, strokeDash: { expr: "datum.dash" } }, encoding: { ...along("from"), ...reach("x2", "to"), ...up() } },
  { data: { name: "course" }, mark: { type: "line", color: INK.wood, strokeWidth: 3, interpolate: "monotone" }, encoding: { ...along(), ...up() } },
  { data: { name: "ready" }, mark: { type: "rule", color: INK.limit, strokeWidth: 9, opacity: 0.4 }, encoding: { ...along("early"), ...reach("x2", "late"), ...up() } },
  { data: { name: "likely" }, mark: { type: "point", filled: true, size: 80, color: INK.limit, opacity: 1 }, encoding: { ...along(), ...up() } },
  ...notes(),
]);

export const dryingPlate: Plate<"drying"> = {
  spec,
  fill(chart, { reader, write }) {
    const { points, ready, target_pct_wet: target, floor_pct_wet: floor } = chart;
    const from = points[0]!.at_ms;
    const to = points.at(-1)!.at_ms;
    const high = Math.max(...points.map((point) => point.pct_wet)) * 1.06;
    const late = ready.late_ms ?? to;
    const shown = ready.early_ms !== null && ready.early_ms < to;
    return {
      title: write(titleOf(ready)),
      subtitle: write(text("picture.drying.subtitle")),
      x: { low: from, high: to, ticks: monthTicks(from, to, 8, reader) },
      y: { low: 0, high, ticks: ticks(0, high, 5, reader) },
      data: {
        course: points.map((point) => ({ x: point.at_ms, y: point.pct_wet })),
        limits: [
          { from, to, y: target, ink: INK.limit, dash: [6, 3] },
          { from, to, y: floor, ink: INK.quiet, dash: [2, 3] },
        ],
        ready: shown ? [{ early: ready.early_ms, late: Math.min(late, to), y: target }] : [],
        likely: ready.at_ms !== null && ready.at_ms < to ? [{ x: ready.at_ms, y: target }] : [],
        notes: [
          note(to, target, write(text("picture.drying.target", { target: q(target, "pct") })), INK.limit, { align: "right", baseline: "bottom", dy: -7 }),
          note(to, floor, write(text("picture.drying.floor", { floor: q(floor, "pct") })), INK.quiet, { align: "right", baseline: "top", dy: 4 }),
        ],
      },
    };
  },
};

/** The range itself: a single date would promise too much. */
function titleOf({ early_ms, late_ms }: Chart<"drying">["ready"]): Text {
  if (early_ms === null) return text("picture.drying.title-never");
  const early = { at_ms: early_ms, show: "date" } as const;
  return late_ms === null ? text("picture.drying.title-open", { early }) : text("picture.drying.title", { early, late: { at_ms: late_ms, show: "date" } });
}
