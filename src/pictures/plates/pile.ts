/** The wood that is left, with its range, down to the day it ends. */
import { text, type Text } from "../../answer.ts";
import type { Chart } from "../charts.ts";
import { INK } from "../look.ts";
import { inReaderUnit, monthTicks, ticks } from "../scale.ts";
import { along, note, notes, reach, sheet, up, type Plate } from "./plate.ts";

const spec = sheet(260, [
  { data: { name: "left" }, mark: { type: "area", color: INK.woodRange, opacity: 0.85 }, encoding: { ...along(), ...up("low"), ...reach("y2", "high") } },
  { data: { name: "left" }, mark: { type: "line", color: INK.wood, strokeWidth: 3 }, encoding: { ...along(), ...up() } },
  { data: { name: "end" }, mark: { type: "point", filled: true, size: 80, color: INK.fire, opacity: 1 }, encoding: { ...along(), ...up() } },
  ...notes(),
]);

export const pilePlate: Plate<"pile"> = {
  spec,
  fill(chart, { reader, write }) {
    const mass = inReaderUnit("kg", reader);
    const { points, ends } = chart;
    const rows = points.map((point) => ({ x: point.at_ms, low: mass.of(point.low_kg), y: mass.of(point.left_kg), high: mass.of(point.high_kg) }));
    const from = rows[0]!.x;
    const to = rows.at(-1)!.x;
    const high = Math.max(...rows.map((row) => row.high)) * 1.08;
    const shown = ends.at_ms !== null && ends.at_ms <= to ? ends.at_ms : null;
    const right = shown !== null && shown > from + 0.55 * (to - from);
    return {
      title: write(titleOf(ends)),
      subtitle: write(text("picture.pile.subtitle", { unit: mass.symbol })),
      x: { low: from, high: to, ticks: monthTicks(from, to, 7, reader) },
      y: { low: 0, high, ticks: ticks(0, high, 5, reader) },
      data: {
        left: rows,
        end: shown === null ? [] : [{ x: shown, y: 0 }],
        notes: [
          ...(shown === null ? [] : [note(shown, 0, write(text("picture.pile.end", { at: { at_ms: shown, show: "day" } })), INK.fire, { align: right ? "right" : "left", baseline: "bottom", dx: right ? -8 : 8, dy: -8 })]),
        ],
      },
    };
  },
};

function titleOf({ early_ms, at_ms, late_ms }: Chart<"pile">["ends"]): Text {
  if (early_ms === null) return text("picture.pile.title-lasts");
  const early = { at_ms: early_ms, show: "date" } as const;
  if (at_ms === null) return text("picture.pile.title-maybe", { early });
  return late_ms === null ? text("picture.pile.title-open", { early }) : text("picture.pile.title", { early, late: { at_ms: late_ms, show: "date" } });
}
